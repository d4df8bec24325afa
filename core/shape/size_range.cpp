#include "core/shape/size_range.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/gauge/gauge_belief.h"
#include "core/shape/scaled_problem.h"
#include "core/shape/size_reach.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

namespace {

/// Of logarithms: a measure that may be out by more (ten times, twice and a half) is no measure. A stitch
/// could vanish, or become a thread.
constexpr double most_size_error = 2.3;
constexpr double most_ratio_error = 0.9;
constexpr double most_stretch_error = 2.3;

double relative_error(double value, double error) {
    const double part = value > 0 ? std::abs(error) / value : 0;
    return std::isfinite(part) ? part : 0;
}

/// An error that is no number is none.
Gauge with_usable_errors(Gauge gauge) {
    const auto usable = [](double value, double error) { return relative_error(value, error) * value; };
    gauge.stitch_width_error_mm = usable(gauge.stitch_width_mm, gauge.stitch_width_error_mm);
    gauge.round_height_error_mm = usable(gauge.round_height_mm, gauge.round_height_error_mm);
    gauge.error_correlation =
        std::isfinite(gauge.error_correlation) ? std::clamp(gauge.error_correlation, -1.0, 1.0) : 0;
    return gauge;
}

/// How far the independent errors of a gauge reach, of logarithms: `ratio` moves with it the size by
/// `size_with_ratio`; `size` is the rest (Cholesky's factor of the covariance of ratio and size).
struct GaugeReach {
    double ratio = 0;
    double size_with_ratio = 0;
    double size = 0;
};

GaugeReach reach_of(const Gauge& gauge) {
    if (!(gauge.stitch_width_mm > 0) || !(gauge.round_height_mm > 0)) return {};
    const SizeAndRatio parts = size_and_ratio(belief_of(with_usable_errors(gauge)));
    const auto reach = [&](double share, double most) {
        return std::clamp(range_deviations * share, -most, most);
    };
    const double own = std::sqrt(1 - parts.correlation * parts.correlation);
    return {reach(parts.ratio_deviation, most_ratio_error),
            reach(parts.size_deviation * parts.correlation, most_size_error),
            reach(parts.size_deviation * own, most_size_error)};
}

/// The problem with h / w and sqrt(w h) moved by these logarithms.
ShapeProblem moved(const ShapeProblem& problem, double ratio, double size) {
    return scaled_problem(problem, std::exp(size - ratio / 2), std::exp(size + ratio / 2));
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

/// The reaches of all measures of one piece.
class SizeReach {
  public:
    SizeReach(const PieceSizes& sizes, const SizesOf& sizes_of)
        : sizes_of_(sizes_of), width_{sizes.width_mm}, height_{sizes.height_mm}, volume_{sizes.volume_mm3} {}

    /// What is found at both ends of an error.
    void add(const ShapeProblem& one_way, const ShapeProblem& other_way) {
        const auto a = sizes_of_(one_way), b = sizes_of_(other_way);
        if (!a || !b) return;
        width_.add(a->width_mm, b->width_mm);
        height_.add(a->height_mm, b->height_mm);
        volume_.add(a->volume_mm3, b->volume_mm3);
    }

    /// A piece whose stitches are all as much larger or smaller is the same shape, larger or smaller.
    void add_scale(double size) {
        const auto scale = [size](Reach& reach, double power) {
            reach.add(reach.middle * std::exp(-power * size), reach.middle * std::exp(power * size));
        };
        scale(width_, 1);
        scale(height_, 1);
        scale(volume_, 3);
    }

    [[nodiscard]] SizeRange range() const { return {width_.range(), height_.range(), volume_.range()}; }

  private:
    const SizesOf& sizes_of_;
    Reach width_, height_, volume_;
};

SizeRange range_about(const PieceSizes& sizes, const ShapeProblem& problem, const Gauge& gauge,
                      double area_stretch_error, const SizesOf& sizes_of) {
    SizeReach found(sizes, sizes_of);
    const GaugeReach reach = reach_of(gauge);
    if (reach.ratio > 0)
        found.add(moved(problem, -reach.ratio, -reach.size_with_ratio),
                  moved(problem, reach.ratio, reach.size_with_ratio));
    found.add_scale(reach.size);
    const double stretch = std::min(range_deviations / deviations_in_half_width *
                                        relative_error(problem.area_stretch, area_stretch_error),
                                    most_stretch_error);
    if (stretch > 0)
        found.add(with_stretch(problem, std::exp(-stretch)), with_stretch(problem, std::exp(stretch)));
    return found.range();
}

PieceSizes measured(const Shape& shape) { return {shape.width_mm, shape.height_mm, shape.volume_mm3}; }

}  // namespace

SizeRange size_range_of(const ShapeProblem& problem, const Gauge& gauge, double area_stretch_error,
                        const SizesOf& sizes_of) {
    const auto sizes = sizes_of(problem);
    return sizes ? range_about(*sizes, problem, gauge, area_stretch_error, sizes_of) : SizeRange{};
}

SizeRange size_range(const ShapeProblem& problem, const Shape& shape, const Gauge& gauge,
                     double area_stretch_error, const ShapeOptions& options) {
    if (!shape.usable()) return {};
    const auto solve = [&](const ShapeProblem& posed) -> std::optional<PieceSizes> {
        const Shape found = solve_shape(posed, options, &shape);
        if (found.termination != Termination::converged) return std::nullopt;
        return measured(found);
    };
    return range_about(measured(shape), problem, gauge, area_stretch_error, solve);
}

SizeRange size_range(const ShapeProblem& problem, const Shape& shape, const Gauge& gauge,
                     double area_stretch_error) {
    return size_range(problem, shape, gauge, area_stretch_error, {});
}

}  // namespace roundwright
