#pragma once

#include "core/shape/shape_problem.h"

namespace roundwright {

/// The problem the same stitches pose at another gauge: every width times `width_factor`, every height times
/// `height_factor`.
[[nodiscard]] ShapeProblem scaled_problem(const ShapeProblem& problem, double width_factor,
                                          double height_factor);

}  // namespace roundwright
