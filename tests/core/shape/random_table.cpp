#include "tests/core/shape/random_table.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace roundwright::test {

namespace {

int whole(std::mt19937& random, int low, int high) {
    return std::uniform_int_distribution<int>(low, high)(random);
}

double real(std::mt19937& random, double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
}

/// Most pieces have some tens of rounds, a few have hundreds.
int round_count(std::mt19937& random) {
    const double u = real(random, 0, 1);
    return 1 + static_cast<int>(std::min(299.0, 22 * u / std::pow(1.0001 - u, 0.45)));
}

/// Change of a round in one of the ways makers work.
int change(std::mt19937& random, int below, int way) {
    switch (way) {
        case 0:
            return 0;
        case 1:
            return whole(random, 1, 12);
        case 2:
            return -whole(random, 1, 12);
        case 3:
            return whole(random, -6, 6);
        case 4:
            return whole(random, -(below - (below + 1) / 2), below);  // anything that can be worked
        default:
            return 6;
    }
}

std::vector<int> counts(std::mt19937& random, int first, int rounds) {
    std::vector<int> made{first};
    int way = whole(random, 0, 5);
    int stay = 0;
    while (static_cast<int>(made.size()) < rounds) {
        if (stay-- == 0) {
            way = whole(random, 0, 5);
            stay = whole(random, 0, 12);
        }
        const int below = made.back();
        const int wanted = below + change(random, below, way);
        made.push_back(std::clamp(wanted, std::max(3, (below + 1) / 2), std::min(2 * below, 2000)));
    }
    return made;
}

}  // namespace

std::vector<int> random_table_counts(std::mt19937& random, int first) {
    return counts(random, first, round_count(random));
}

ShapeProblem random_table(std::mt19937& random) {
    constexpr double heights[] = {0.25, 1, 1, 1, 1, 1.5, 2, 3};
    constexpr double stretches[] = {0, 0.01, 0.04, 0.04, 0.08, 0.2};
    ShapeProblem problem;
    const double w = real(random, 1, 12);
    const double h = w * real(random, 0.7, 1.3);
    const int rounds = round_count(random);
    const bool mixed = whole(random, 0, 3) == 0;
    const int start = whole(random, 0, 3);
    const int first = start == 0 ? whole(random, 3, 60) : whole(random, 3, 12);
    problem.first = start == 0 ? MeridianEnd::open : MeridianEnd::pole;
    problem.last = whole(random, 0, 1) == 0 ? MeridianEnd::open : MeridianEnd::drawn_closed;
    if (start == 1) problem.first = MeridianEnd::drawn_closed;
    problem.rest_loop_mm.push_back(problem.first == MeridianEnd::pole ? 0 : first * w);
    for (const int stitches : counts(random, first, rounds)) {
        problem.rest_loop_mm.push_back(stitches * w);
        problem.rest_height_mm.push_back(h * (mixed ? heights[whole(random, 0, 7)] : 1));
    }
    problem.fan_height_mm = w / 2;
    if (start == 1 && mixed) problem.first_fan_height_mm = first * w / (2 * std::numbers::pi);
    problem.area_stretch = stretches[whole(random, 0, 5)];
    problem.stitch_width_mm = w;
    return problem;
}

}  // namespace roundwright::test
