#include "core/shape/cold_start.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright {

namespace {

/// The part of a wall's length that may go sideways in a start, so that every wall rises a little.
constexpr double steepest = 0.95;

/// A flat piece is in balance even where it would rather rise: a start is never quite flat.
constexpr double least_rise = 1e-3;

void lift(const Meridian& meridian, Positions& x) {
    double lifted = 0;
    for (std::size_t s = 0; s < meridian.segments(); ++s) {
        lifted += least_rise * meridian.rest_height[s];
        x[2 * s + 3] += lifted;
    }
}

double between(double a, double b, double t) { return a + t * (b - a); }

}  // namespace

Positions start_from_counts(const Meridian& meridian) {
    const std::size_t nodes = meridian.nodes();
    Positions x(2 * nodes, 0.0);
    for (std::size_t i = 0; i < nodes; ++i)
        x[2 * i] = meridian.on_axis(i) ? 0 : meridian.rest_loop[i] / (2 * std::numbers::pi);
    for (std::size_t i = 1; i < nodes; ++i)
        x[2 * i] = std::min(x[2 * i], x[2 * i - 2] + steepest * meridian.rest_height[i - 1]);
    for (std::size_t i = nodes - 1; i-- > 0;)
        x[2 * i] = std::min(x[2 * i], x[2 * i + 2] + steepest * meridian.rest_height[i]);
    for (std::size_t i = 1; i < nodes; ++i) {
        const double h = meridian.rest_height[i - 1];
        const double dr = x[2 * i] - x[2 * i - 2];
        x[2 * i + 1] = x[2 * i - 1] + std::sqrt(std::max(h * h - dr * dr, 0.0));
    }
    return x;
}

Positions refined(const Meridian& fine, const Positions& coarse) {
    const std::size_t nodes = fine.nodes();
    Positions x(2 * nodes, 0.0);
    for (std::size_t i = 0; i < nodes; ++i) {
        const std::size_t below = i / 2;
        const bool kept = i % 2 == 0 || i + 1 == nodes;
        const std::size_t node = i + 1 == nodes ? coarse.size() / 2 - 1 : below;
        for (std::size_t k = 0; k < 2; ++k)
            x[2 * i + k] =
                kept ? coarse[2 * node + k] : (coarse[2 * below + k] + coarse[2 * below + 2 + k]) / 2;
    }
    return x;
}

Positions start_from_shape(const ShapeProblem& problem, const Meridian& meridian, const Shape& shape) {
    const std::size_t first = node_of_first_loop(problem);
    const std::size_t loops = problem.rest_loop_mm.size();
    Positions x = start_from_counts(meridian);
    const double scale = static_cast<double>(shape.radius_mm.size() - 1) / static_cast<double>(loops - 1);
    for (std::size_t i = 0; i < loops; ++i) {
        const double at = scale * static_cast<double>(i);
        const std::size_t below = std::min(static_cast<std::size_t>(at), shape.radius_mm.size() - 2);
        const double t = at - static_cast<double>(below);
        x[2 * (first + i)] = between(shape.radius_mm[below], shape.radius_mm[below + 1], t);
        x[2 * (first + i) + 1] = between(shape.z_mm[below], shape.z_mm[below + 1], t);
    }
    if (first == 1) x[1] = std::min(shape.first_pole_z_mm, x[3]);
    if (problem.last == MeridianEnd::drawn_closed) x.back() = std::max(shape.last_pole_z_mm, x[x.size() - 3]);
    lift(meridian, x);
    return x;
}

}  // namespace roundwright
