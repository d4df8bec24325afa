#pragma once

#include <vector>

namespace roundwright {

/// Whole stitch counts for wanted ones: what is wanted, what must stay, and what is workable and tidy.
struct CountProblem {
    std::vector<double> wanted;  ///< stitches, one a round; whole or not
    std::vector<int> kept;       ///< counts of the first rounds, which stay as they are
    std::vector<int> accepted;   ///< empty, or a count a round that is never held awkward (0: none)
    int loops_below = 0;         ///< under round 1; 0: it is worked into a ring
    int start_count = 6;         ///< counts are tidy that are multiples of it
    double tidiness = 0.5;       ///< 0: likeness alone; 1: tidy wherever it can be worked
    double flat_growth = 6.283185307179586;  ///< stitches more a round that lie flat, 2 pi h / w
    double half_round = 1.5707963267948966;  ///< stitches that widen a round by half a round, pi h / (2 w)
    int least = 3;                           ///< fewest stitches of any round
};

struct CountChoice {
    std::vector<int> counts;
    double cost = 0;
};

/// The workable counts of least cost: no round has more than twice, or fewer than half, the stitches of the
/// round below it.
///
///     cost = sum_i ((N_i - c_i) / t_i)^2                          likeness; t_i = max(half round, 0.02 c_i)
///          + sum_i (excess_i / t_i)^2                             growth beyond flat that was not wanted
///          + T sum_i (awkward_i + 1/2 [not one group repeated])           T = 3 t / (1 - t)
///
/// with c_i the wanted count and excess_i = |N_i - N_(i-1)| - max(flat, |c_i - c_(i-1)|) - 1 where that is
/// positive; awkward_i is 0 for a multiple of
/// the start count, 1/2 for a multiple of half of it, else 1; a fifth of that in a round that repeats the one
/// below. Exact over windows that hold the whole counts
/// about each wanted one, the multiples of the start count on both its sides, and whatever the growth rule
/// makes necessary; dynamic programming, O(rounds * window^2). Kept rounds add no cost of their own. Wanted
/// counts below `least` stand for `least`.
[[nodiscard]] CountChoice choose_counts(const CountProblem& problem);

/// The cost above of any counts, one a round; infinite if they cannot be worked or change a kept round.
[[nodiscard]] double counts_cost(const CountProblem& problem, const std::vector<int>& counts);

}  // namespace roundwright
