#pragma once

#include <vector>

#include "core/reshape/frog_back.h"
#include "core/reshape/resize.h"
#include "core/toy/toy.h"

namespace roundwright {

/// How many rounds, and of how many stitches, go on best from rounds that are already worked.
struct Continuation {
    std::vector<int> counts;  ///< those kept among them
    std::vector<double> ends_at;
    double cost = 0;
};

/// The cost of going on with `counts` (kept ones first): that of its counts (`counts_cost`), laid off from
/// the wanted end, and of its length, ((n - n*) / t)^2 with n* the wanted number of rounds and t half a round
/// or 2 % of n*. If nothing is worked after the kept rounds, the last of them counts as the closing one.
[[nodiscard]] double continuation_cost(const FitProblem& problem, const std::vector<int>& counts);

/// The continuation of least cost, over every number of rounds whose length alone does not cost more.
[[nodiscard]] Continuation best_continuation(const FitProblem& problem);

/// One way on from what is on the hook.
struct WayOn {
    FrogBack back;              ///< what has to be undone for it
    Reshaped made;              ///< its piece, shape and size, and whether that meets the target
    double shape_error_mm = 0;  ///< how far its outline lies from that of the piece made new from the start
};

/// The best piece that keeps everything worked so far, and those that rip back 1, 2, ... `most_ripped` rounds
/// (a round begun counts as one). Ends where the target itself can be worked on from, or nothing is left to
/// rip. Empty if `target` has no piece, or asks for another gauge: then nothing worked so far can stay.
[[nodiscard]] std::vector<WayOn> continue_from_here(const PieceForm& form, const Target& target,
                                                    const WorkedSoFar& worked, int most_ripped,
                                                    const ReshapeOptions& options = {});

}  // namespace roundwright
