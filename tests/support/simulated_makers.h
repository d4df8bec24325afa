#pragma once

#include <random>
#include <span>
#include <string_view>

#include "core/gauge/gauge.h"

namespace roundwright::testing {

/// Makers drawn at random, who measure as makers do and then make a piece: how often is it within the range
/// that it was said to come out in?
///
/// Their worsted stitches with a 4 mm hook are those of eight published pieces (5.9 mm at a belt that
/// stuffing stretches, standard deviation 11 %); their ratio h / w has the published spread of 0.12, about
/// 0.98, half way from the median of 17 published gauges, most of them swatches, to what pieces in the round
/// have. They stuff with a standard deviation of a quarter of what they meant to. What they know of their
/// gauge is:
enum class KnownOfGauge {
    hook_alone,         ///< 3.5 mm, yarn fine, light or medium
    weight_and_hook,    ///< medium and 4 mm
    large_circle,       ///< eight rounds
    circle,             ///< five rounds of six, measured across as they lie
    circle_other_hook,  ///< the same with a hook 0.5 mm thinner
    swatch_in_rounds,   ///< stitches and rounds counted over 100 mm
    small_swatch,       ///< the same over 2 in
    swatch_in_rows,     ///< over 100 mm
    finished_piece,     ///< its width and height; another piece is made in the gauge found
    stated,             ///< by someone who says how well
};

struct KindOfKnowledge {
    KnownOfGauge kind;
    std::string_view name;
};
[[nodiscard]] std::span<const KindOfKnowledge> kinds_of_knowledge();

/// Of all pieces made: how many lie in their range, and how wide it is, as a share of the size (half of the
/// whole width, on the mean).
struct RangesHeld {
    int pieces = 0;
    int widths_within = 0;
    int heights = 0;  ///< pieces that have a height: not discs
    int heights_within = 0;
    double mean_half_width = 0;
    double mean_half_height = 0;

    [[nodiscard]] double share_of_widths() const { return double(widths_within) / pieces; }
    [[nodiscard]] double share_of_heights() const { return double(heights_within) / heights; }
};

/// `makers` of them, each with a piece of its own: balls, heads and bodies, cups, ears and discs.
[[nodiscard]] RangesHeld ranges_held(KnownOfGauge kind, int makers, unsigned seed);

}  // namespace roundwright::testing
