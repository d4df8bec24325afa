#pragma once

#include <numbers>

namespace roundwright {

/// How far loops of fabric that is not stuffed yield to lie flat. Friction between its stitches lets such
/// fabric rest anywhere within a band of strain: patted down by hand, blocked, or under its own weight, it
/// stays. No published measurement was found; both limits are bracketed by common practice, with h = w.

/// A loop can be pushed together by this share of its length before it buckles into waves: between six
/// singles a round at the published swatch of h / w = 0.92 (0.036), which lie flat, and seven at h = w
/// (0.102), which ruffle.
inline constexpr double pushed_flat_share = 0.05;

/// A loop can be pulled wider by this share. Between eight half doubles a round, 1.5 high, which lie flat
/// (0.178; twelve doubles and six singles need 0.047), and five singles, which cup (0.257). As a cone such a
/// round would rise by 0.56 of its height.
inline constexpr double pulled_flat_share = 0.207;

/// What would have to be pulled wider by more than this does not yield at all: nobody presses flat what
/// springs back, and five singles a round stand as the cone that their counts make. Between both shares
/// fabric yields in part, so that a shape does not jump where a gauge crosses the limit.
inline constexpr double unpulled_above_share = 0.25;

/// The least and the most h / w at which a circle of so many stitches more each round lies flat.
struct FlatRatios {
    double least = 0;
    double most = 0;
};
[[nodiscard]] constexpr FlatRatios flat_ratios(double increases_a_round) {
    const double ratio = increases_a_round / (2 * std::numbers::pi);
    return {ratio * (1 - pushed_flat_share), ratio * (1 + pulled_flat_share)};
}

}  // namespace roundwright
