#include "core/materials/stuffing.h"

#include <algorithm>
#include <array>

#include "core/toy/toy.h"

namespace roundwright {
namespace {

struct Knot {
    double stretch;
    double fill;
};
constexpr std::array<Knot, 3> knots{{{light_stuffing_stretch, light_over_medium_fill},
                                     {medium_stuffing_stretch, 1.0},
                                     {firm_stuffing_stretch, firm_over_medium_fill}}};

double between(const Knot& a, const Knot& b, double stretch) {
    return a.fill + (b.fill - a.fill) * (stretch - a.stretch) / (b.stretch - a.stretch);
}

constexpr double grams_per_kg = 1e3;
constexpr double mm3_per_m3 = 1e9;

double cubic_metres(double volume_mm3) { return std::max(volume_mm3, 0.0) / mm3_per_m3; }

Estimate density_of(const Making& making) {
    if (!making.stuffing_density_kg_per_m3) return guessed_fill_kg_per_m3;
    const double own = *making.stuffing_density_kg_per_m3;
    const double error = own * stuffed_again_error + making.stuffing_density_error_kg_per_m3.value_or(0);
    return {own, std::max(own - error, 0.0), own + error};
}

}  // namespace

double fill_over_medium(double area_stretch) {
    if (area_stretch <= 0) return 0;
    const double stretch = std::clamp(area_stretch, knots.front().stretch, knots.back().stretch);
    return stretch <= knots[1].stretch ? between(knots[0], knots[1], stretch)
                                       : between(knots[1], knots[2], stretch);
}

Estimate stuffing_grams(double volume_mm3, double area_stretch, const Making& making) {
    return density_of(making) * (fill_over_medium(area_stretch) * cubic_metres(volume_mm3) * grams_per_kg);
}

Estimate stuffing_weighed(const WeighedPiece& weighed, const Estimate& yarn_g) {
    const double half_step = weighed.scales_g / 2;
    const Estimate empty = weighed.empty_g ? Estimate{*weighed.empty_g, *weighed.empty_g - half_step,
                                                      *weighed.empty_g + half_step}
                                           : yarn_g;
    return {weighed.stuffed_g - empty.likely, weighed.stuffed_g - half_step - empty.high,
            weighed.stuffed_g + half_step - empty.low};
}

std::optional<Estimate> medium_density(const Estimate& grams, double volume_mm3, double area_stretch) {
    const double room = cubic_metres(volume_mm3) * fill_over_medium(area_stretch) * grams_per_kg;
    if (grams.low <= 0 || room <= 0) return std::nullopt;
    return grams * (1 / room);
}

Making with_stuffing_density(Making making, const Estimate& kg_per_m3) {
    making.stuffing_density_kg_per_m3 = kg_per_m3.likely;
    making.stuffing_density_error_kg_per_m3 =
        std::max(kg_per_m3.high - kg_per_m3.likely, kg_per_m3.likely - kg_per_m3.low);
    return making;
}

}  // namespace roundwright
