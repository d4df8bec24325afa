#pragma once

#include <vector>

#include "core/stitches/stitch_graph.h"

namespace roundwright {

/// One cell of fabric between the edge below a round and the edge above it. Edges are measured in loops from
/// the start of the round, in the order worked; a cell takes [below_first, below_last] of the edge below and
/// one whole loop of the edge above.
struct LaidStitch {
    int round = 0;   ///< whose stitch it is; a loop that a partial round leaves alone belongs to the stitch
    int stitch = 0;  ///< that made it, and -1 is a loop of the foundation
    double below_first = 0;
    double below_last = 0;
    bool carried = false;    ///< a loop that a partial round leaves alone
    double face_first = 0;   ///< its face begins so far across the one of its stitch, and takes so many faces
    double face_across = 1;  ///< across and up: more than one where cells are coarser than stitches
    double face_up = 1;
};

/// The cells of a round, gapless and in order: cell c takes loop c of the edge above, and the last one's
/// `below_last` is the first one's `below_first` plus `loops_below`.
struct LaidRound {
    std::vector<LaidStitch> cells;
    int loops_below = 0;
};

/// Where each stitch of a piece stands. A stitch stands on the loops it is worked into; stitches in one loop
/// share it evenly; a chain, or a stitch beside a skipped loop, takes up the free loops beside it. A graph
/// whose feet do not come out (see `PieceGraph`) is laid as far as it goes and stretched over the rest.
/// A round that leaves no loop has no cells.
///
/// In a piece worked in rows (`turned`) every row meets the loops below from their end; its cells still stand
/// in the order of row 1, so that the fabric is one.
[[nodiscard]] std::vector<LaidRound> lay_stitches(const StitchGraph& graph, bool turned = false);

}  // namespace roundwright
