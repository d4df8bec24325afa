#pragma once

#include "core/reshape/fit_problem.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

/// Solves one draft after another, each from the shape of the one before.
class DraftSolver {
  public:
    explicit DraftSolver(const FitProblem& problem) : problem_(problem) {}

    void start_from(const Shape& shape) { warm_ = shape; }
    [[nodiscard]] Shape solve(const RoundsDraft& draft);

  private:
    const FitProblem& problem_;
    Shape warm_;
};

[[nodiscard]] inline Size size_of(const Shape& shape) { return {shape.width_mm, shape.height_mm}; }

}  // namespace roundwright
