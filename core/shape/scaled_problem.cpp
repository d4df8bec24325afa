#include "core/shape/scaled_problem.h"

namespace roundwright {

ShapeProblem scaled_problem(const ShapeProblem& problem, double width_factor, double height_factor) {
    ShapeProblem scaled = problem;
    for (double& loop : scaled.rest_loop_mm) loop *= width_factor;
    for (double& height : scaled.rest_height_mm) height *= height_factor;
    scaled.fan_height_mm *= width_factor;
    scaled.first_fan_height_mm *= width_factor;
    scaled.stitch_width_mm *= width_factor;
    return scaled;
}

}  // namespace roundwright
