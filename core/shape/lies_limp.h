#pragma once

#include "core/shape/shape_problem.h"

namespace roundwright {

/// How a piece that is not stuffed lies, by its counts alone. Discs, cones and bowls stand by themselves:
/// their rounds widen up to the open edge, or their walls are low for their width, or rise from a flat base.
/// What is closed has nothing to hold its walls up, and nor have a leg, an ear or a pouch: their fabric
/// hardly stretches and hardly resists bending.

/// Flattened, front on back. A seam sewn straight flattens what it closes.
[[nodiscard]] bool lies_limp(const ShapeProblem& problem);

/// Two discs, or nearly, that are joined: top on base.
[[nodiscard]] bool lies_on_its_face(const ShapeProblem& problem);

/// Decides both for a problem whose loops are set. Rows have no loop to flatten.
void lay_unstuffed(ShapeProblem& problem, Joining joining);

}  // namespace roundwright
