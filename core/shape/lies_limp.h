#pragma once

#include "core/shape/shape_problem.h"

namespace roundwright {

/// Whether a piece that is not stuffed lies flattened, one layer on the other, by its counts alone.
///
/// Discs, cones and bowls stand by themselves: their rounds widen up to the open edge, or their walls are low
/// for their width. Two discs that are joined lie on their face. A closed ball, a leg, an ear or a pouch has
/// walls that nothing holds up: its fabric hardly stretches and hardly resists bending, so it lies flat.
/// A seam sewn straight flattens what it closes.
[[nodiscard]] bool lies_limp(const ShapeProblem& problem);

}  // namespace roundwright
