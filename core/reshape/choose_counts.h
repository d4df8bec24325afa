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
    /// Empty, or a number a round: stitches more, and stitches fewer, than the round below from which on it
    /// ruffles, or gathers. More than that is chosen only where nothing else can be worked.
    std::vector<double> most_growth;
    std::vector<double> most_closing;
    int least = 3;            ///< fewest stitches of any round
    double most_pairs = 5e4;  ///< counts of neighbouring rounds to try together in search of the very least
};

struct CountChoice {
    std::vector<int> counts;
    double cost = 0;
    bool is_least = false;  ///< no other counts cost less; else none in the windows that were tried
};

/// The workable counts of least cost: no round has more than twice, or fewer than half, the stitches of the
/// round below it.
///
///     cost = sum_i ((N_i - c_i) / t_i)^2                          likeness; t_i = max(half round, 0.02 c_i)
///          + sum_i (excess_i / t_i)^2                             growth beyond flat that was not wanted
///          + sum_i (4 max(0, jump_i - 1/2))^2                     growth off the wanted one: an edge
///          + T sum_i (awkward_i + 1/2 [not one group repeated])           T = 3 t / (1 - t)
///          + 10^8 sum_i over_i                                    growth or closing beyond its limit
///
/// with c_i the wanted count; excess_i = |N_i - N_(i-1)| - max(flat, |c_i - c_(i-1)|) - 1 where that is
/// positive; jump_i = |N_i - N_(i-1) - (c_i - c_(i-1))| / flat; awkward_i is 0 for a multiple of
/// the start count, 1/2 for a multiple of half of it, else 1; a fifth of that in a round that repeats the one
/// below. Kept rounds add no cost of their own. Wanted counts below `least` stand for `least`.
///
/// Every term is of one round or of two that follow each other, so dynamic programming over the rounds, its
/// state the count, finds the least: O(rounds * counts^2). First over counts near the wanted ones; then over
/// all that a sequence of no more than the cost found can hold, if those are few enough (`most_pairs`).
[[nodiscard]] CountChoice choose_counts(const CountProblem& problem);

/// The cost above of any counts, one a round; infinite if they cannot be worked or change a kept round.
[[nodiscard]] double counts_cost(const CountProblem& problem, const std::vector<int>& counts);

/// How many awkward rounds there are: sum_i (awkward_i + 1/2 [not one group repeated]) of the cost above,
/// without the kept ones.
[[nodiscard]] double awkward_rounds(const CountProblem& problem, const std::vector<int>& counts);

}  // namespace roundwright
