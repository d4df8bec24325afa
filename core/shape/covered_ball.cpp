#include "core/shape/covered_ball.h"

#include <algorithm>
#include <numbers>
#include <numeric>

#include "core/shape/fabric_limits.h"
#include "core/shape/piece_measures.h"
#include "core/shape/reads_as_flat.h"

namespace roundwright {

namespace {

using std::numbers::pi;

bool closed(MeridianEnd end) { return end != MeridianEnd::open; }

double widest_loop_mm(const ShapeProblem& problem) { return *std::ranges::max_element(problem.rest_loop_mm); }

/// From pole to pole along the fabric, not stretched.
double meridian_mm(const ShapeProblem& problem) {
    double length = std::accumulate(problem.rest_height_mm.begin(), problem.rest_height_mm.end(), 0.0);
    if (problem.first == MeridianEnd::drawn_closed)
        length += problem.first_fan_height_mm > 0 ? problem.first_fan_height_mm : problem.fan_height_mm;
    if (problem.last == MeridianEnd::drawn_closed) length += problem.fan_height_mm;
    return length;
}

}  // namespace

std::optional<double> inside_width_mm(const ShapeProblem& problem, const PieceMeasures& measures,
                                      double fabric_mm) {
    if (!measures.usable() || reads_as_flat(problem, measures.width_mm, measures.height_mm))
        return std::nullopt;
    const double middle = problem.limp ? widest_loop_mm(problem) / pi : measures.width_mm;
    const double inside = middle - fabric_mm;
    return inside > 0 ? std::optional(inside) : std::nullopt;
}

std::optional<double> largest_covered_ball_mm(const ShapeProblem& problem, double fabric_mm) {
    if (problem.rest_loop_mm.empty() || problem.equivalent_round) return std::nullopt;
    if (!closed(problem.first) && !closed(problem.last)) return std::nullopt;
    double middle = widest_loop_mm(problem) / pi;
    if (closed(problem.first) && closed(problem.last))
        middle = std::min(middle, 2 * meridian_mm(problem) / pi);
    const double ball = middle * (1 + gaps_above_stretch) - fabric_mm;
    return ball > 0 ? std::optional(ball) : std::nullopt;
}

}  // namespace roundwright
