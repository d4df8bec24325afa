#pragma once

#include "core/materials/estimate.h"
#include "core/pattern/making.h"

namespace roundwright {

/// Single crochets a minute of a practised maker: our own estimate, from common practice; the maker's own
/// pace replaces it.
inline constexpr Estimate usual_stitches_per_minute{18, 12, 25};

/// Half width of the range round the maker's own pace, over it.
inline constexpr double pace_error = 0.15;

/// Minutes at the hook for so many single crochets' worth of work (a stitch is taken to cost
/// time as it takes yarn). Stuffing, sewing up and finishing are not in it.
[[nodiscard]] Estimate working_minutes(double single_crochets, const Making& making);

}  // namespace roundwright
