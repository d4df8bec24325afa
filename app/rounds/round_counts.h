#pragma once

#include <cstddef>
#include <vector>

#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright::app {

/// Stitches on the edge below the first round and after each: rounds + 1 numbers. Into a ring the first is 0,
/// and so are rounds that are not in the graph.
[[nodiscard]] std::vector<int> edge_counts(const StitchGraph& graph, std::size_t rounds);
[[nodiscard]] std::vector<int> edge_counts(const Piece& piece);

}  // namespace roundwright::app
