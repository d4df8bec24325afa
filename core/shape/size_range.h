#pragma once

#include "core/gauge/gauge.h"
#include "core/gauge/yarn_standard.h"
#include "core/shape/shape_problem.h"

namespace roundwright {

struct Shape;
struct ShapeOptions;

/// Between what sizes a piece may come out.
struct SizeRange {
    Range width_mm;
    Range height_mm;
    Range volume_mm3;

    friend bool operator==(const SizeRange&, const SizeRange&) = default;
};

/// How much more or less firmly than was said a piece may come out stuffed, as a share of its stretch: a
/// starting value of our own, about half way from medium to light or firm.
inline constexpr double stuffing_error_share = 0.5;

/// The sizes that the errors of the gauge and of the mean area stretch (half widths) allow: the shape is
/// solved again from `shape` at both ends of each of three independent errors, two that together make those
/// of the gauge (by Cholesky's factor of their covariance) and that of the stretch, and the changes are added
/// as independent errors are, by squares. So a range holds 95 in 100 sizes where half widths are two standard
/// deviations, and more than 90 where every value within them is as likely (a rectangular distribution: JCGM
/// 100:2008, 4.3.7; the sum of two such is within the root of the squares 91 times in 100). Without errors,
/// or where a solve fails, the range is the size itself. `shape` is the solution of `problem`, which was
/// posed at `gauge`. A piece that is not stuffed has no error of the stretch.
[[nodiscard]] SizeRange size_range(const ShapeProblem& problem, const Shape& shape, const Gauge& gauge,
                                   double area_stretch_error, const ShapeOptions& options);
/// The same with the model's own constants.
[[nodiscard]] SizeRange size_range(const ShapeProblem& problem, const Shape& shape, const Gauge& gauge,
                                   double area_stretch_error);

}  // namespace roundwright
