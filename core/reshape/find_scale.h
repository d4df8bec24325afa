#pragma once

#include "core/reshape/draft_solver.h"
#include "core/reshape/fit_problem.h"

namespace roundwright {

/// The scale of a profile at which the solved shape has the wanted size, if stitches and rounds could be
/// parted; the nearest that was found if there is none within a factor of two of `problem.scale`. Broyden's
/// method on the logarithms of both scales.
[[nodiscard]] ProfileScale find_scale(const FitProblem& problem, DraftSolver& solver);

}  // namespace roundwright
