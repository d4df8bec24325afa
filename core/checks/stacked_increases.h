#pragma once

#include <vector>

#include "core/stitches/stitch_graph.h"

namespace roundwright {

/// Where a round increases, as parts of the way around the loops it is worked over, ascending.
[[nodiscard]] std::vector<double> increase_places(const GraphRound& round);

/// Whether a round has as many increases as the one below and each stands over one of those, within a fifth
/// of the way to the next. (The places of evenly spread increases shift by less from round to round;
/// staggered ones lie near the middle.)
[[nodiscard]] bool are_stacked(const GraphRound& below, const GraphRound& round);

}  // namespace roundwright
