#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

#include "core/shape/shape_problem.h"

namespace roundwright::bench {

/// A stuffed piece of n rounds with what real ones have: a growing base, a waist, a head and a drawn end. Its
/// counts keep their proportions as n grows.
inline ShapeProblem piece_of_rounds(std::int64_t rounds) {
    ShapeProblem problem;
    problem.rest_loop_mm.push_back(0);
    const auto n = static_cast<double>(rounds);
    for (std::int64_t i = 1; i <= rounds; ++i) {
        const double t = static_cast<double>(i) / n;
        const double part = 0.1 + std::sin(std::numbers::pi * t) * (1.1 + 0.4 * std::sin(7 * t));
        problem.rest_loop_mm.push_back(5 * std::max(6.0, std::round(2 * n * part)));
        problem.rest_height_mm.push_back(5);
    }
    problem.last = MeridianEnd::drawn_closed;
    problem.fan_height_mm = 2.5;
    problem.area_stretch = 0.04;
    problem.stitch_width_mm = 5;
    return problem;
}

}  // namespace roundwright::bench
