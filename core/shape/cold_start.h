#pragma once

#include "core/shape/membrane.h"

namespace roundwright {

/// A start from the counts alone: every loop as wide as it can be while its neighbours' walls still reach,
/// standing on one another with the walls nearly unstretched. z grows from the first node.
[[nodiscard]] Positions start_from_counts(const Meridian& meridian);

/// Positions for a fine meridian from those of its coarsened one.
[[nodiscard]] Positions refined(const Meridian& fine, const Positions& coarse);

/// Positions for a meridian from a shape of a similar piece, loop by loop, stretched over the difference
/// where the numbers of rounds differ.
[[nodiscard]] Positions start_from_shape(const ShapeProblem& problem, const Meridian& meridian,
                                         const Shape& shape);

}  // namespace roundwright
