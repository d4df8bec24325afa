#pragma once

#include <cstddef>
#include <vector>

#include "core/shape/shape_problem.h"

namespace roundwright {

/// Whether a piece has nothing that keeps it off the table: stuffing, or a drawn end, whose loops fold in.
/// (An oval's chain only lies between its two sides.) What is closed, and neither limp nor on its face, is so
/// small that its fabric holds its form.
[[nodiscard]] bool can_lie_flat(const ShapeProblem& problem);

/// The loops and rounds of a piece that is not stuffed, as friction lets them rest once it is laid down
/// (core/gauge/flat_limits.h has the limits and why). Everything else of the problem stays.
///
/// From the inside of a disc outwards, loop i could lie on the table as a circle of radius
/// R_i = r_(i-1) + h_i. It takes that radius where its length needs to be pulled wider by
/// `pulled_flat_share` at most for it, or pushed together by no more than it takes before it buckles. A
/// round that would have to be pulled wider takes part only if the rounds about it grow nearly as a disc
/// does: the wall of a cup would soon reach as far, but nothing pulls it down. Only rounds that run on from
/// the start or up to a free edge take part, so that a shelf between two walls stands as it is made. Loops
/// yield, and heights do not: a rug of 55 rounds is as wide as their heights, and a little more. Only where
/// flat rounds end in a wall, which holds its own width, the heights within are pushed together until they
/// fit, by `pushed_flat_share` at most.
///
/// How far a round takes part goes from all to nothing between the two shares of the limits, so the shape is
/// continuous in the gauge. A piece that is worked inwards lies as the one that is worked outwards; of one
/// that widens and closes again, only the rounds that widen lie down, and the others rest on them.
struct YieldedFabric {
    ShapeProblem problem;
    /// One a round: 0 to 1, how far it lies down in a run of rounds that do so from the start, or from the
    /// end.
    std::vector<double> from_start;
    std::vector<double> from_end;
};
/// `problem` must be one that can lie flat.
[[nodiscard]] YieldedFabric yielded_flat(const ShapeProblem& problem);

/// The same of two discs that are joined: each lies as it would alone.
[[nodiscard]] ShapeProblem yielded_on_face(const ShapeProblem& problem);

/// By how much a loop that is not stuffed can be pushed together before it waves, mm: half a stitch at
/// least, or two in a ring, which need not be drawn quite closed.
[[nodiscard]] double pushed_together_mm(const ShapeProblem& problem, std::size_t loop);

}  // namespace roundwright
