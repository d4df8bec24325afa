#pragma once

#include "core/shape/solve_shape.h"

namespace roundwright {

/// A piece of two discs, or nearly, that is not stuffed and lies on its face: its loops lie in circles of
/// just their length, up to the widest in the base and from there in the top, a fabric's thickness above it.
/// What its wall has to spare of height lies crumpled between them. Where loops grow or close faster than a
/// disc does, what they have to spare is taken as gathered.
[[nodiscard]] Shape lay_on_face(const ShapeProblem& problem);

}  // namespace roundwright
