#pragma once

#include "core/shape/solve_shape.h"

namespace roundwright {

/// A piece that is not stuffed and lies limp, pressed flat: its front and its back lie on each other, folded
/// at both sides. `Shape::sections` says how each loop lies; the rest of the shape is measured on that.
///
/// Each layer is a plane fabric. Half of every loop lies in it as a circular arc of just that length l_i
/// (rounds hardly stretch), which turns by an angle b_i of its own. The bends minimise, to second order in
/// the angles,
///
///     sum over rounds 1/2 a (k_wale / 720 ((l_i b_i - l_(i-1) b_(i-1)) / h - (dl / h)^2)^2
///                            + k_shear / 12 ((b_i + b_(i-1)) / 2 - dl / h)^2),      dl = l_i - l_(i-1):
///
/// columns of stitches, from loop to loop at equal shares of their length, want to be of one height (the
/// first term, its mean over the columns taken off) and square on the rounds (the second). It is one
/// tridiagonal system: no start, no iteration, one answer. Then each round rises by as much as brings its
/// columns, on the whole, nearest to their height.
///
/// Both terms vanish where the fabric can lie flat as it is: a tube lies as a strip half as wide as its loops
/// are long, a cone of growth g as a sector of the angle pi g (its unrolled sector, folded in half), a disc
/// as half a disc. Between those, as from the rounded tip of an ear to its straight sides, fabric must
/// stretch and shear, and this is about the least of it. k_shear / k_course = 0.1 is a starting value of our
/// own. Where loops grow or close faster than a disc does, what they have to spare is taken as gathered.
[[nodiscard]] Shape lay_flat(const ShapeProblem& problem, const ShapeOptions& options);

}  // namespace roundwright
