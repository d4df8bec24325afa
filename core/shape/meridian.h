#pragma once

#include <cstddef>
#include <limits>
#include <vector>

#include "core/shape/shape_problem.h"

namespace roundwright {

/// The meridian of a problem as nodes joined by segments. A drawn end adds one node, the pole its fan runs
/// to. A pole lies on the axis and has no loop.
struct Meridian {
    std::vector<double> rest_loop;    ///< mm, one a node; 0 at a pole
    std::vector<double> rest_height;  ///< mm, one a segment: segment s joins node s and node s + 1
    bool first_on_axis = false;
    bool last_on_axis = false;
    std::size_t first_stuffed = 0;  ///< the stuffing lies in the segments from this one on,
    std::size_t after_stuffed = std::numeric_limits<std::size_t>::max();  ///< and before this one

    [[nodiscard]] std::size_t nodes() const { return rest_loop.size(); }
    [[nodiscard]] std::size_t segments() const { return rest_height.size(); }
    [[nodiscard]] bool on_axis(std::size_t node) const {
        return (node == 0 && first_on_axis) || (node + 1 == nodes() && last_on_axis);
    }
};

/// Whether loop i of a problem is a point on the axis.
[[nodiscard]] bool is_pole(const ShapeProblem& problem, std::size_t loop);
/// The relaxed length of loop i, mm; 0 at a pole.
[[nodiscard]] double rest_length_mm(const ShapeProblem& problem, std::size_t loop);

/// Whether the solver can work on a problem: at least one round, every length a positive finite number (0 at
/// a pole), the stretch finite and not negative.
[[nodiscard]] bool is_usable(const ShapeProblem& problem);

[[nodiscard]] Meridian meridian_of(const ShapeProblem& problem);

/// Node of the meridian at which loop 0 of the problem lies: 1 behind a fan, else 0.
[[nodiscard]] std::size_t node_of_first_loop(const ShapeProblem& problem);

/// The same meridian with pairs of segments joined to one, for a first approximation of a long piece.
[[nodiscard]] Meridian coarsened(const Meridian& fine);

}  // namespace roundwright
