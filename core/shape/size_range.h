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

/// How the errors of stitch width and round height go: each by itself (a swatch measured both ways), or both
/// together (one estimate or one measurement gave both, so that all lengths are out by the same part).
enum class GaugeErrors { independent, together };

/// The sizes the gauge's errors allow. Independent: stitch width and round height are each moved to both ends
/// of their range, the shape solved again from `shape`, and the two changes added as independent errors are,
/// by squares. Together: every length scales by the stitch width's error. Without errors, or where a solve
/// fails, the range is the size itself. `shape` is the solution of `problem`, which was posed at `gauge`.
[[nodiscard]] SizeRange size_range(const ShapeProblem& problem, const Shape& shape, const Gauge& gauge,
                                   GaugeErrors errors = GaugeErrors::independent,
                                   const ShapeOptions& options = {});

}  // namespace roundwright
