#pragma once

#include <random>
#include <vector>

#include "core/shape/shape_problem.h"

namespace roundwright::test {

/// A random piece that could be worked: 1 to 300 rounds, mostly short; counts from 3 up that at most double
/// or halve from round to round; smooth runs, sudden jumps and noise; every start and end, stuffing, gauge
/// and stitch height.
[[nodiscard]] ShapeProblem random_table(std::mt19937& random);

/// The counts of such a piece by themselves, `first` in the first round.
[[nodiscard]] std::vector<int> random_table_counts(std::mt19937& random, int first);

}  // namespace roundwright::test
