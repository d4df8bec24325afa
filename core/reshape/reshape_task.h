#pragma once

#include <stop_token>

#include "core/reshape/fit_problem.h"
#include "core/reshape/piece_form.h"
#include "core/reshape/reshape_code.h"
#include "core/reshape/target.h"

namespace roundwright {

struct ReshapeOptions {
    double tidiness = 0.5;  ///< 0: likeness alone; 1: tidy rounds wherever they can be worked
    std::stop_token stop;
    /// A silhouette's own counts: in each round the whole number nearest to the stitches that lie around the
    /// silhouette there which can be worked (`choose_counts` without tidiness), in the number of rounds that
    /// comes nearest to its size, whatever that then is. Only for a target with a silhouette.
    bool as_drawn = false;
};

/// Whether a silhouette's own counts are asked for.
[[nodiscard]] bool is_as_drawn(const Target& target, const ReshapeOptions& options);

/// A target as a task for `fit_rounds`, or what is wrong with it.
struct ReshapeTask {
    ReshapeCode code = ReshapeCode::unusable_piece;  ///< `met`: the task can be tried
    Size wanted;
    PieceForm base;  ///< the piece, its ends changed where an outline asks for it
    FitProblem problem;
};
[[nodiscard]] ReshapeTask reshape_task(const PieceForm& form, const Target& target,
                                       const ReshapeOptions& options);

}  // namespace roundwright
