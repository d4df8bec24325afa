#pragma once

#include <random>
#include <vector>

namespace roundwright::test {

/// Rounds of a body, head or limb as toys have them: six (or so) increases a round to some width, even
/// rounds, perhaps a waist, and down again. 8 to 45 rounds.
[[nodiscard]] inline std::vector<int> random_toy_counts(std::mt19937& random) {
    const auto whole = [&](int low, int high) {
        return std::uniform_int_distribution<int>(low, high)(random);
    };
    const int start = whole(5, 8);
    std::vector<int> counts;
    const auto run = [&](int change, int rounds) {
        for (int i = 0; i < rounds && counts.back() + change >= start; ++i)
            counts.push_back(counts.back() + change);
    };
    counts.push_back(start);
    run(start, whole(2, 8));
    run(0, whole(1, 8));
    if (whole(0, 2) == 0) {
        run(-start, whole(1, 2));
        run(0, whole(0, 3));
        run(start, whole(1, 3));
        run(0, whole(1, 5));
    }
    run(-start, 20);
    return counts;
}

}  // namespace roundwright::test
