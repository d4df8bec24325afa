#pragma once

#include <optional>

#include "core/shape/piece_measures.h"
#include "core/shape/shape_problem.h"

namespace roundwright {

/// An oval seen from above where it is widest.
struct OvalPlan {
    double length_mm = 0;
    double width_mm = 0;
};

/// The oval that a piece worked around a chain makes, where it is not stuffed; nothing for a stuffed one,
/// since stuffing draws an oval rounder by an amount this model does not know, and nothing for other pieces.
///
/// Its loops are the parallel curves of the chain: at a distance d, a straight line of length L has a
/// parallel curve 2 L + 2 pi d long (Steiner's formula for parallel bodies; Santalo, Integral Geometry and
/// Geometric Probability, I.1), L + 2 d long and 2 d wide. The equivalent round piece has the loop around the
/// chain spread to a circle of radius r_0 = L / pi, and its circle of radius r is 2 pi r = 2 L + 2 pi (r -
/// r_0) long: with d = r - r_0 both have the same loops at the same distances, so the same stretch and the
/// same energy but for the bend around each loop, which the model leaves out. Nothing where the piece gets
/// narrower than its chain. `round`: of that equivalent round piece; there is no need of a plan where the
/// oval itself was solved.
[[nodiscard]] std::optional<OvalPlan> oval_plan(const ShapeProblem& problem, const PieceMeasures& round);

/// Whether the piece is worked around both sides of a chain.
[[nodiscard]] bool starts_oval(const ShapeProblem& problem);

/// The disc that the two ends of such a piece make together: what its loops are longer than the two sides of
/// the chain. Rows that are turned at the first end have one end, half a disc.
[[nodiscard]] ShapeProblem ends_as_disc(const ShapeProblem& oval, int ends = 2);

}  // namespace roundwright
