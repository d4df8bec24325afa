#pragma once

#include <algorithm>

#include "core/shape/shape_problem.h"

namespace roundwright {

/// How thick single crochet is, in stitch widths: a starting value of our own, the same that the bending
/// stiffness of `ShapeOptions` stands for.
inline constexpr double fabric_thickness_in_stitches = 0.35;

[[nodiscard]] inline double fabric_thickness_mm(const ShapeProblem& problem) {
    const double stitch =
        problem.stitch_width_mm > 0 ? problem.stitch_width_mm : problem.rest_height_mm.front();
    return fabric_thickness_in_stitches * stitch;
}

/// From the middle between two layers to the middle of each, where a loop that would be a circle of this
/// radius is pressed flat: half a thickness, and in a loop too narrow to fold so tightly half its radius.
[[nodiscard]] inline double pressed_half_depth_mm(double thickness_mm, double radius_mm) {
    return std::min(thickness_mm, radius_mm) / 2;
}

}  // namespace roundwright
