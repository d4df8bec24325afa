#pragma once

#include <vector>

#include "core/base/diagnostic.h"
#include "core/base/text_span.h"
#include "core/pattern/toy.h"
#include "core/stitches/stitch_graph.h"

namespace roundwright {

/// The stitches of every round of a piece, with what is wrong in them. A round whose words cannot be read, or
/// whose loops do not come out, is given as far as it goes and named in `problems`, so that the rounds after
/// it, and the shape, are still there.
struct RoundProblem {
    int round = 0;     ///< from 0
    TextSpan where;    ///< in the round's own words; empty for an evenly worked round
    int expected = 0;  ///< loops the round below has
    int found = 0;     ///< loops the words take
};
struct PieceGraph {
    StitchGraph graph;
    std::vector<RoundProblem> problems;
};

[[nodiscard]] PieceGraph piece_graph(const Piece& piece);

/// Stitches of each round when it is done; the same as the graph's `loops_left`.
[[nodiscard]] std::vector<int> stitch_counts(const StitchGraph& graph);

}  // namespace roundwright
