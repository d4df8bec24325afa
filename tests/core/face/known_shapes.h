#pragma once

#include <cmath>
#include <numbers>

#include "core/shape/solve_shape.h"
#include "core/toy/toy.h"

namespace roundwright::test {

/// Loops on a sphere from pole to just before the other pole, start below.
inline Shape sphere_shape(double radius_mm, int rounds) {
    Shape shape;
    shape.termination = Termination::converged;
    for (int k = 0; k <= rounds; ++k) {
        const double angle = std::numbers::pi * k / (rounds + 1);
        shape.radius_mm.push_back(radius_mm * std::sin(angle));
        shape.z_mm.push_back(radius_mm * (1 - std::cos(angle)));
    }
    shape.width_mm = 2 * radius_mm;
    shape.height_mm = shape.z_mm.back();
    return shape;
}

/// Loops on a cone from its tip upwards; `half_angle` from the axis.
inline Shape cone_shape(double slant_mm, double half_angle, int rounds) {
    Shape shape;
    shape.termination = Termination::converged;
    for (int k = 0; k <= rounds; ++k) {
        const double s = slant_mm * k / rounds;
        shape.radius_mm.push_back(s * std::sin(half_angle));
        shape.z_mm.push_back(s * std::cos(half_angle));
    }
    shape.width_mm = 2 * shape.radius_mm.back();
    shape.height_mm = shape.z_mm.back();
    return shape;
}

inline Piece closed_ball() {
    Piece piece;
    piece.end = End::drawn_closed;
    return piece;
}

inline std::vector<int> constant_counts(int rounds, int stitches) {
    return std::vector<int>(static_cast<std::size_t>(rounds), stitches);
}

}  // namespace roundwright::test
