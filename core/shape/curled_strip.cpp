#include "core/shape/curled_strip.h"

#include <numbers>

namespace roundwright {

std::optional<CurledStrip> curled_strip(int chains, double stitches_a_chain, double stitch_width_mm,
                                        double height_mm, double fabric_mm) {
    if (chains < 1 || !(stitches_a_chain > 1) || !(stitch_width_mm > 0) || !(height_mm > 0))
        return std::nullopt;
    CurledStrip strip;
    strip.chains = chains;
    strip.stitches_a_chain = stitches_a_chain;
    strip.inner_mm = chains * stitch_width_mm;
    strip.outer_mm = stitches_a_chain * strip.inner_mm;
    strip.height_mm = height_mm;
    strip.inner_radius_mm = height_mm / (stitches_a_chain - 1);
    strip.outer_radius_mm = strip.inner_radius_mm + height_mm;
    strip.turns = strip.inner_mm / (2 * std::numbers::pi * strip.inner_radius_mm);
    strip.length_mm = strip.turns * fabric_mm;
    return strip;
}

std::optional<CurledStrip> curled_strip(const Piece& piece, const std::vector<int>& stitches,
                                        const Gauge& gauge, double fabric_mm) {
    constexpr int fewest_a_chain = 2;
    const auto* chain = std::get_if<OpenTube>(&piece.start);
    if (piece.joining != Joining::rows || !chain || stitches.empty()) return std::nullopt;
    if (stitches.back() < fewest_a_chain * chain->chains) return std::nullopt;
    const double height = gauge.round_height_mm * static_cast<double>(stitches.size());
    return curled_strip(chain->chains, static_cast<double>(stitches.back()) / chain->chains,
                        gauge.stitch_width_mm, height, fabric_mm);
}

}  // namespace roundwright
