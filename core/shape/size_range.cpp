#include "core/shape/size_range.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/shape/scaled_problem.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

namespace {

/// A measure that may be out by more than this part is no measure; it would let a stitch vanish.
constexpr double most_relative_error = 0.9;

double relative_error(double value, double error) {
    const double part = value > 0 ? std::abs(error) / value : 0;
    return std::isfinite(part) ? std::min(part, most_relative_error) : 0;
}

ShapeProblem with_stretch(ShapeProblem problem, double factor) {
    problem.area_stretch *= factor;
    return problem;
}

/// How far one measure of the piece may come out below and above what it is.
struct Reach {
    double middle;
    double down = 0;
    double up = 0;

    void add(double a, double b) {
        down = std::hypot(down, std::min({0.0, a - middle, b - middle}));
        up = std::hypot(up, std::max({0.0, a - middle, b - middle}));
    }
    [[nodiscard]] Range range() const { return {std::max(0.0, middle - down), middle + up}; }
};

}  // namespace

SizeRange size_range(const ShapeProblem& problem, const Shape& shape, const Gauge& gauge,
                     double area_stretch_error, const ShapeOptions& options) {
    if (!shape.usable()) return {};
    Reach width{shape.width_mm};
    Reach height{shape.height_mm};
    Reach volume{shape.volume_mm3};
    const auto add = [&](const ShapeProblem& one_way, const ShapeProblem& other_way) {
        const Shape a = solve_shape(one_way, options, &shape);
        const Shape b = solve_shape(other_way, options, &shape);
        if (a.termination != Termination::converged || b.termination != Termination::converged) return;
        width.add(a.width_mm, b.width_mm);
        height.add(a.height_mm, b.height_mm);
        volume.add(a.volume_mm3, b.volume_mm3);
    };
    const auto move_gauge = [&](double of_width, double of_height) {
        if (of_width == 0 && of_height == 0) return;
        add(scaled_problem(problem, 1 - of_width, 1 - of_height),
            scaled_problem(problem, 1 + of_width, 1 + of_height));
    };
    const double width_part = relative_error(gauge.stitch_width_mm, gauge.stitch_width_error_mm);
    const double height_part = relative_error(gauge.round_height_mm, gauge.round_height_error_mm);
    const double common = std::clamp(gauge.error_correlation, -1.0, 1.0);
    move_gauge(width_part, common * height_part);
    move_gauge(0, std::sqrt(1 - common * common) * height_part);
    const double stretch_part = relative_error(problem.area_stretch, area_stretch_error);
    if (stretch_part > 0)
        add(with_stretch(problem, 1 - stretch_part), with_stretch(problem, 1 + stretch_part));
    return {width.range(), height.range(), volume.range()};
}

SizeRange size_range(const ShapeProblem& problem, const Shape& shape, const Gauge& gauge,
                     double area_stretch_error) {
    return size_range(problem, shape, gauge, area_stretch_error, {});
}

}  // namespace roundwright
