#pragma once

#include <vector>

#include "core/base/limits.h"
#include "core/language/round/round_syntax.h"
#include "core/stitches/stitch_graph.h"

namespace roundwright {

/// What a round is worked on.
struct WorkSetting {
    int loops_below = 0;
    bool into_ring = false;  ///< round 1 of a ring: stitches take no loops
    int oval_chains = 0;     ///< round 1 around a chain of so many; 0: none
    int yarn = 0;
    int most_stitches = static_cast<int>(max_stitches_per_piece);
};

struct WorkedRound {
    GraphRound round;
    int taken = 0;   ///< loops the words take
    int made = 0;    ///< stitches they make; skips are none
    int effort = 0;  ///< stitches that were worked, or left unworked, to find this out
    int last_yarn = 0;
    std::vector<ReadDiagnostic> problems;
};

/// Works a round's words stitch by stitch and proves that they come out: every loop below taken once, every
/// "around" filled. A round that does not is cut where the loops run out, or filled up with skips, so that it
/// always covers the loops below (or, where there is no room for its stitches, leaves the rest of them
/// unworked); `taken` and `made` say what the words would make, up to `largest_number`.
/// What goes on beyond the loops below is counted, not worked, so that the time is bounded by the loops below
/// and `most_stitches`, whatever numbers the words name. `choices` answers the syntax's questions.
[[nodiscard]] WorkedRound work_round(const RoundSyntax& syntax, const std::vector<bool>& choices,
                                     const WorkSetting& setting);

}  // namespace roundwright
