#pragma once

#include <vector>

#include "core/shape/shape_problem.h"

namespace roundwright::test {

inline constexpr double width_mm = 5;

/// A piece in rounds of single crochet from a magic ring.
inline ShapeProblem piece_of(const std::vector<int>& counts, double area_stretch, MeridianEnd last,
                             double w = width_mm, double h = width_mm) {
    ShapeProblem problem;
    problem.rest_loop_mm.push_back(0);
    for (const int stitches : counts) {
        problem.rest_loop_mm.push_back(stitches * w);
        problem.rest_height_mm.push_back(h);
    }
    problem.last = last;
    problem.fan_height_mm = w / 2;
    problem.area_stretch = area_stretch;
    problem.stitch_width_mm = w;
    return problem;
}

/// n rounds of six increases, n even rounds, then six decreases a round down to six.
inline std::vector<int> ball_counts(int n) {
    std::vector<int> counts;
    for (int i = 1; i <= n; ++i) counts.push_back(6 * i);
    counts.insert(counts.end(), static_cast<std::size_t>(n), 6 * n);
    for (int i = n - 1; i >= 1; --i) counts.push_back(6 * i);
    return counts;
}

/// `rounds` rounds of k, 2 k, 3 k, ... stitches.
inline std::vector<int> disc_counts(int k, int rounds) {
    std::vector<int> counts;
    for (int i = 1; i <= rounds; ++i) counts.push_back(k * i);
    return counts;
}

}  // namespace roundwright::test
