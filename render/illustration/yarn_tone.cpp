#include "render/illustration/yarn_tone.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace roundwright::render {
namespace {

int mixed(double from, double to, double share) {
    return static_cast<int>(std::lround(std::clamp(from + share * (to - from), 0.0, 255.0)));
}

}  // namespace

QColor yarn_tone(Colour yarn, double light) {
    if (light >= 1) {
        const double share = std::min(0.55, (light - 1) * 0.9);
        return {mixed(yarn.red, 255, share), mixed(yarn.green, 255, share), mixed(yarn.blue, 255, share)};
    }
    // The deepest shade keeps a quarter of the colour, and shade on yarn stays warm: light comes through.
    const double share = 1 - std::max(0.0, light);
    return {mixed(yarn.red, 0.27 * yarn.red + 6, share), mixed(yarn.green, 0.25 * yarn.green + 6, share),
            mixed(yarn.blue, 0.26 * yarn.blue + 9, share)};
}

Colour paled(Colour colour, double share) {
    const auto channel = [&](std::uint8_t value) {
        return static_cast<std::uint8_t>(mixed(value, 255, share));
    };
    return {channel(colour.red), channel(colour.green), channel(colour.blue)};
}

double stepped_light(double light) { return std::round(light / light_step) * light_step; }

}  // namespace roundwright::render
