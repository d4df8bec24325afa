#include "core/reshape/draft_solver.h"

namespace roundwright {

Shape DraftSolver::solve(const RoundsDraft& draft) {
    ShapeOptions options;
    options.stop = problem_.stop;
    Shape shape = solve_shape(problem_.problem_of(draft), options, warm_.usable() ? &warm_ : nullptr);
    if (shape.termination == Termination::converged) warm_ = shape;
    return shape;
}

}  // namespace roundwright
