#include "core/reshape/find_scale.h"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace roundwright {
namespace {

using Eigen::Matrix2d;
using Eigen::Vector2d;

constexpr int most_steps = 8;
constexpr double near_enough = 2e-3;  // of the size
constexpr double longest_step = 0.4;

Vector2d log_ratio(const Size& wanted, const Size& reached) {
    return {std::log(wanted.width_mm / reached.width_mm), std::log(wanted.height_mm / reached.height_mm)};
}

std::optional<Vector2d> off_at(const FitProblem& problem, const ProfileScale& scale, DraftSolver& solver) {
    const Shape shape =
        solver.solve(draft_in_parts(problem, scale, nearest_numbers_of_rounds(problem, scale).front()));
    if (!shape.usable() || shape.height_mm <= 0) return std::nullopt;
    return log_ratio(problem.wanted, size_of(shape));
}

// A size that cannot be had would send the scale out of all proportion.
double about(double first, double scale) { return std::clamp(scale, first / 2, first * 2); }

ProfileScale stepped(const FitProblem& problem, const ProfileScale& scale, const Vector2d& step) {
    return {about(problem.scale.around, scale.around * std::exp(step[0])),
            about(problem.scale.along, scale.along * std::exp(step[1]))};
}

// Broyden's good update of the inverse Jacobian of (log size) over (log scale).
void update(Matrix2d& inverse, const Vector2d& step, const Vector2d& change) {
    const Vector2d predicted = inverse * change;
    const double denominator = step.dot(predicted);
    if (std::abs(denominator) < 0.1 * step.squaredNorm()) return;
    inverse += (step - predicted) * (step.transpose() * inverse) / denominator;
}

}  // namespace

ProfileScale find_scale(const FitProblem& problem, DraftSolver& solver) {
    Matrix2d inverse = Matrix2d::Identity();
    Vector2d step = Vector2d::Zero();
    Vector2d before = Vector2d::Zero();
    double least = std::numeric_limits<double>::infinity();
    ProfileScale scale = problem.scale;
    ProfileScale best = scale;
    for (int i = 0; i < most_steps && !problem.stop.stop_requested(); ++i) {
        const auto off = off_at(problem, scale, solver);
        if (!off) break;
        if (off->norm() < least) best = scale;
        least = std::min(least, off->norm());
        if (least < near_enough) break;
        if (i > 0) update(inverse, step, before - *off);
        before = *off;
        step = (inverse * *off).cwiseMax(-longest_step).cwiseMin(longest_step);
        scale = stepped(problem, scale, step);
    }
    return best;
}

}  // namespace roundwright
