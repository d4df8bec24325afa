#include "core/checks/stacked_increases.h"

#include <cmath>

namespace roundwright {

namespace {

constexpr double over_each_other = 0.2;

/// Of two places on a closed round, both as parts of the way around.
double apart(double a, double b) { return std::abs(std::remainder(a - b, 1.0)); }

}  // namespace

std::vector<double> increase_places(const GraphRound& round) {
    std::vector<double> places;
    int last = -1;
    for (const GraphStitch& made : round.stitches) {
        const int foot = static_cast<int>(made.first_foot);
        if (!made.stitch.same_foot || foot == last || round.loops_below <= 0) continue;
        places.push_back((foot + 0.5) / round.loops_below);
        last = foot;
    }
    return places;
}

bool are_stacked(const GraphRound& below, const GraphRound& round) {
    const std::vector<double> lower = increase_places(below);
    const std::vector<double> upper = increase_places(round);
    const std::size_t count = upper.size();
    if (count == 0 || lower.size() != count) return false;
    const double near = over_each_other / static_cast<double>(count);
    for (std::size_t i = 0; i < count; ++i) {
        const auto is_near = [&](std::size_t j) { return apart(upper[i], lower[j % count]) < near; };
        if (!is_near(i) && !is_near(i + 1) && !is_near(i + count - 1)) return false;
    }
    return true;
}

}  // namespace roundwright
