#pragma once

#include "core/shape/piece_measures.h"
#include "core/shape/shape_problem.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

/// The measures of a shape that the round solver found of a problem.
[[nodiscard]] PieceMeasures measures_of(const ShapeProblem& problem, const Shape& shape);

}  // namespace roundwright
