#pragma once

#include "core/shape/solve_shape.h"

namespace roundwright {

/// Flattens the last loop of a stuffed piece to a straight seam of half its length, and lets the loops below
/// it go over from round to flat, each as long as it was: their sections are stadia.
///
/// An approximation, like a pillow's edge, without a balance of forces: the depth grows from the seam as a
/// sine over about the width of the round piece, and the rounds rise by what is left of their height when
/// their stitches lean in to the seam and out to its ends.
void sew_straight(const ShapeProblem& problem, Shape& shape);

}  // namespace roundwright
