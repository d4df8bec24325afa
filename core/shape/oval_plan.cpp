#include "core/shape/oval_plan.h"

#include <algorithm>
#include <numbers>

namespace roundwright {

bool starts_oval(const ShapeProblem& problem) {
    return problem.equivalent_round && problem.first == MeridianEnd::drawn_closed &&
           problem.first_fan_height_mm > 0;
}

std::optional<OvalPlan> oval_plan(const ShapeProblem& problem, const Shape& shape) {
    if (!starts_oval(problem) || problem.area_stretch > 0 || !shape.usable()) return std::nullopt;
    const auto& radius = shape.radius_mm;
    const double chain_radius = radius.front();
    if (*std::ranges::min_element(radius) < chain_radius) return std::nullopt;
    const double length = std::numbers::pi * chain_radius;
    const double width = 2 * (*std::ranges::max_element(radius) - chain_radius);
    return OvalPlan{length + width, width};
}

}  // namespace roundwright
