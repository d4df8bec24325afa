#pragma once

#include <optional>

#include "core/gauge/gauge_belief.h"
#include "core/gauge/yarn_standard.h"

namespace roundwright {

/// What is believed of a gauge in the round before anything is measured. Every constant is of natural
/// logarithms, and is a standard deviation unless it is called otherwise.

/// h / w. 17 published gauges of single crochet have 0.79 to 1.25, median 0.96, standard deviation 0.12, most
/// of them of swatches. Worked in the round it is about 1: a cup 1.02, a ball of 24 rounds 1.02, a rug 1.00.
inline constexpr double usual_ratio = 1;
inline constexpr double ratio_spread = 0.12;

/// Hands differ: what is left between makers of the same weight of yarn with the same hook. Eight stuffed
/// worsted pieces have a standard deviation of 0.11 in the width of a stitch at the belt; with one circle
/// that is a third wider, and less the part of the ratio, that is 0.11 of the size too.
inline constexpr double hand_spread = 0.11;

/// Another hook scales both directions; the yarn stays as thick as it was, so half of the change is uncertain
/// (a half width: a guess).
inline constexpr double hook_error_share = 0.25;

/// The estimate by weight of yarn and hook: the middle of the Craft Yarn Council's range, scaled by the hook
/// and corrected by toys that were measured. Nothing for a weight without a range (lace), or a hook that has
/// no size.
[[nodiscard]] std::optional<GaugeBelief> estimated_belief(YarnWeight weight, double hook_mm);

/// Where the weight of yarn is not known: the one that toys are usually worked in with this hook, and another
/// one may be meant. A hook that is not a positive number counts as 3.5 mm.
[[nodiscard]] GaugeBelief usual_belief(double hook_mm);

/// What a measurement starts from: it alone says how large the stitches are, and only the ratio is known to
/// lie about where it usually does.
[[nodiscard]] GaugeBelief belief_before_measuring(double hook_mm);

/// A gauge found with one hook as it comes out with another; the same if either hook is not known (0).
[[nodiscard]] GaugeBelief with_other_hook(const GaugeBelief& belief, double measured_hook_mm, double hook_mm);

}  // namespace roundwright
