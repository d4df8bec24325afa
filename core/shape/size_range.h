#pragma once

#include "core/gauge/gauge.h"
#include "core/gauge/yarn_standard.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

/// Between what sizes a piece may come out.
struct SizeRange {
    Range width_mm;
    Range height_mm;
    Range volume_mm3;
};

/// The sizes the gauge's errors allow: the shape is solved again from `shape` at both ends of each of two
/// independent errors that together make those of the gauge (by Cholesky's factor of their covariance), and
/// the changes are added as independent errors are, by squares. Without errors, or where a solve fails, the
/// range is the size itself. `shape` is the solution of `problem`, which was posed at `gauge`.
[[nodiscard]] SizeRange size_range(const ShapeProblem& problem, const Shape& shape, const Gauge& gauge,
                                   const ShapeOptions& options = {});

}  // namespace roundwright
