#pragma once

#include <vector>

#include "core/reshape/draft_solver.h"
#include "core/reshape/fit_problem.h"

namespace roundwright {

/// What one stitch more in each round adds to a size, mm.
struct SizeSlope {
    std::vector<double> width_mm;
    std::vector<double> height_mm;
};

/// By solving once a round with a stitch more in it; 0 for the first `kept` rounds.
[[nodiscard]] SizeSlope size_slope(const RoundsDraft& draft, const Shape& shape, std::size_t kept,
                                   DraftSolver& solver);

/// Counts with a stitch more or fewer, again and again, in a run of equal rounds or in the first or last of
/// it, each where the sum
///
///     (dW^2 + dH^2) / allowed^2 + cost_weight * cost
///
/// falls most, until it falls no more: dW and dH are what the size then misses if it changes as the slope
/// says, and cost is that of the counts (`counts_cost`). Never makes a bulge or a waist that was not there.
[[nodiscard]] std::vector<int> trimmed_counts(const CountProblem& problem, std::vector<int> counts,
                                              const SizeSlope& slope, const Size& missing, double allowed_mm,
                                              double cost_weight);

}  // namespace roundwright
