#pragma once

#include <algorithm>

#include "core/shape/fabric_thickness.h"
#include "core/shape/shape_problem.h"

namespace roundwright {

/// Whether a finished piece is called flat and drawn from above. Without stuffing that is what rises by no
/// more than its fabric is thick, in one layer or in two, just as its rounds are said to lie flat
/// (core/shape/lie.h). A stuffed piece is flat up to a tenth of its width.
[[nodiscard]] inline bool reads_as_flat(const ShapeProblem& problem, double width_mm, double height_mm) {
    constexpr double slope = 0.1, rounding = 1 + 1e-9;
    if (problem.area_stretch > 0) return height_mm < std::max(usual_fabric_mm, slope * width_mm);
    const double layers = problem.on_its_face ? 2 : 1;
    return height_mm <= rounding * layers * fabric_thickness_mm(problem);
}

}  // namespace roundwright
