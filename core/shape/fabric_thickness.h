#pragma once

#include <algorithm>

#include "core/gauge/fabric_thickness.h"
#include "core/shape/shape_problem.h"

namespace roundwright {

/// That of the problem's yarn where it is known.
[[nodiscard]] inline double fabric_thickness_mm(const ShapeProblem& problem) {
    if (problem.fabric_thickness_mm > 0) return problem.fabric_thickness_mm;
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
