#pragma once

#include <optional>
#include <stop_token>
#include <vector>

#include "core/base/vec.h"
#include "core/shape/fabric/stitch_cells.h"
#include "core/shape/shape_problem.h"

namespace roundwright {

/// How far each round of a piece around a chain takes part in lying flat, 0 to 1, as the round solve judges
/// a disc (core/shape/yield_flat.h): what its two ends have more than the chain's sides is a disc cut in two.
/// Empty where nothing lies flat: a stuffed piece, one that does not start around a chain, or whose first
/// round stands. Rows that are turned at the first end have one end.
[[nodiscard]] std::vector<double> flat_parts_of_oval(const ShapeProblem& problem, bool rows);

/// Lets the first rounds of a piece that is not stuffed yield where its stitches are. Those rounds are laid
/// in a plane in balance, with heights that hold (loops yield, and heights do not). Each triangle takes its
/// form there for its relaxed one, round by round so far as `parts` say, but loops are pushed together and
/// pulled wider only within the limits (core/gauge/flat_limits.h).
///
/// Where all rounds take part, all nodes as they lie in the plane, y = 0, their outside below: where the
/// shape is to be sought from. Nothing where only some rounds do, or where there is no such plane shape; then
/// nothing has yielded.
[[nodiscard]] std::optional<std::vector<Vec3>> lay_flat(StitchCells& cells, const std::vector<double>& parts,
                                                        const std::stop_token& stop = {});

}  // namespace roundwright
