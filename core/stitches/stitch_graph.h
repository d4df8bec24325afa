#pragma once

#include <vector>

#include "core/stitches/stitch.h"

namespace roundwright {

/// A stitch and the loops it stands on: `feet` consecutive loops from `first_foot` on, counted along the
/// loops that its round is worked over.
struct GraphStitch {
    Stitch stitch;
    int first_foot = 0;

    friend bool operator==(const GraphStitch&, const GraphStitch&) = default;
};

/// One round: its stitches in the order worked, over `loops_below` loops of the edge so far, from
/// `first_below` on. A full round is worked over the whole edge; a partial one over a part of it, and its
/// loops take that part's place. Round 1 of a ring is worked into the ring itself: `loops_below` is 0 and the
/// feet carry no meaning.
struct GraphRound {
    std::vector<GraphStitch> stitches;
    int first_below = 0;
    int loops_below = 0;
    int loops_left = 0;  ///< loops on the edge when the round is done (the round's own, for a full round)

    friend bool operator==(const GraphRound&, const GraphRound&) = default;
};

/// Which loops every stitch of a piece is worked into. Charts, colour, yarn use, words and shape come from
/// it.
struct StitchGraph {
    int foundation_loops = 0;  ///< loops round 1 is worked over; 0 when it is worked into a ring
    std::vector<GraphRound> rounds;

    friend bool operator==(const StitchGraph&, const StitchGraph&) = default;
};

}  // namespace roundwright
