#pragma once

#include <vector>

#include "core/reshape/choose_counts.h"

namespace roundwright {

/// The counts that are tried for one round.
struct Window {
    int low = 0;
    int high = 0;

    [[nodiscard]] int size() const { return high - low + 1; }
};

/// Where good counts are likely to be: about each wanted count, with the multiples of the start count on both
/// its sides and whatever the growth rule makes necessary. Some sequence within them can be worked.
[[nodiscard]] std::vector<Window> likely_windows(const CountProblem& problem);

/// Windows that hold every sequence of no more than this cost, widened to hold `likely` too: no round of it
/// is further off the wanted count than cost = ((N - c) / t)^2 allows.
[[nodiscard]] std::vector<Window> windows_within(const CountProblem& problem, double cost,
                                                 const std::vector<Window>& likely);

}  // namespace roundwright
