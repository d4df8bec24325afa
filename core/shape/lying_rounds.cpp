#include "core/shape/lying_rounds.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "core/shape/meridian.h"

namespace roundwright {

namespace {

/// A piece whose rounds take part at more levels than this is blended from so many of them.
constexpr std::size_t most_levels = 16;
/// Of its height that a round may rise by its rounding.
constexpr double rounding = 1e-6;

/// A base that what stands on it would draw in or out by more than the first part begins to give up its
/// plane, and at the second it has: rounds that gather pull it up.
constexpr double always_fits = 0.15;
constexpr double never_fits = 0.3;

double rest_radius(const ShapeProblem& problem, std::size_t loop) {
    return rest_length_mm(problem, loop) / (2 * std::numbers::pi);
}

LoopCircles circles_at_zero(std::size_t loops) {
    return {std::vector<double>(loops, 0), std::vector<double>(loops, 0), 0, 0};
}

/// Lays the loops from `inner`, which lies there, up to `outer`, each as wide as it is long or as its round
/// reaches; what a round does not go sideways it rises.
void lay_outwards(const ShapeProblem& problem, std::size_t inner, std::size_t outer, LoopCircles& at) {
    const bool up = inner < outer;
    for (std::size_t i = inner; i != outer;) {
        const std::size_t next = up ? i + 1 : i - 1;
        const double height = problem.rest_height_mm[std::min(i, next)];
        const double radius = std::clamp(rest_radius(problem, next), std::max(0.0, at.radius_mm[i] - height),
                                         at.radius_mm[i] + height);
        const double across = (radius - at.radius_mm[i]) / height;
        const double rise = std::sqrt(std::max(0.0, 1 - across * across));
        at.radius_mm[next] = radius;
        at.z_mm[next] = at.z_mm[i] + (up ? 1 : -1) * (rise > rounding ? rise * height : 0);
        i = next;
    }
}

/// Lays a disc whose edge is the loop `edge`, which lies there, around `inner`. Gives what its lengths had to
/// be multiplied by.
double lay_within(const ShapeProblem& problem, std::size_t inner, std::size_t edge, LoopCircles& at) {
    const double radius = at.radius_mm[edge];
    const double z = at.z_mm[edge];
    at.radius_mm[inner] = rest_radius(problem, inner);
    at.z_mm[inner] = 0;
    lay_outwards(problem, inner, edge, at);
    const double scale = at.radius_mm[edge] > 0 ? radius / at.radius_mm[edge] : 1;
    const double shift = z - scale * at.z_mm[edge];
    for (std::size_t i = std::min(inner, edge); i <= std::max(inner, edge); ++i) {
        at.radius_mm[i] *= scale;
        at.z_mm[i] = scale * at.z_mm[i] + shift;
    }
    return scale;
}

/// Rounds that are held at a level: from the start, and from the end.
struct Held {
    std::size_t first = 0;
    std::size_t last = 0;

    friend bool operator==(const Held&, const Held&) = default;
};

Held held_at(const YieldedFabric& fabric, double level) {
    Held held;
    const std::size_t rounds = fabric.from_start.size();
    while (held.first < rounds && fabric.from_start[held.first] >= level) ++held.first;
    while (held.first + held.last < rounds && fabric.from_end[rounds - 1 - held.last] >= level) ++held.last;
    return held;
}

bool lies_within(const ShapeProblem& problem, std::size_t end, std::size_t joint) {
    return rest_radius(problem, end) <= rest_radius(problem, joint);
}

/// How long the loop at the edge of a disc is as it lies: what it has to spare is in waves.
double lying_edge_mm(const ShapeProblem& problem, std::size_t inner, std::size_t edge) {
    LoopCircles at = circles_at_zero(problem.rest_loop_mm.size());
    at.radius_mm[inner] = rest_radius(problem, inner);
    lay_outwards(problem, inner, edge, at);
    return 2 * std::numbers::pi * at.radius_mm[edge];
}

ShapeProblem between(const ShapeProblem& problem, const Held& held) {
    ShapeProblem left = problem;
    const std::size_t end = problem.rest_loop_mm.size() - 1;
    const std::size_t last_joint = end - held.last;
    if (held.first > 0 && lies_within(problem, 0, held.first))
        left.rest_loop_mm[held.first] = lying_edge_mm(problem, 0, held.first);
    if (held.last > 0 && lies_within(problem, end, last_joint))
        left.rest_loop_mm[last_joint] = lying_edge_mm(problem, end, last_joint);
    const auto first = static_cast<std::ptrdiff_t>(held.first);
    const auto last = static_cast<std::ptrdiff_t>(held.last);
    left.rest_loop_mm.erase(left.rest_loop_mm.end() - last, left.rest_loop_mm.end());
    left.rest_loop_mm.erase(left.rest_loop_mm.begin(), left.rest_loop_mm.begin() + first);
    left.rest_height_mm.erase(left.rest_height_mm.end() - last, left.rest_height_mm.end());
    left.rest_height_mm.erase(left.rest_height_mm.begin(), left.rest_height_mm.begin() + first);
    if (held.first > 0) left.first = MeridianEnd::open;
    if (held.last > 0) left.last = MeridianEnd::open;
    return left;
}

LoopCircles all_held(const ShapeProblem& problem) {
    const std::size_t loops = problem.rest_loop_mm.size();
    const bool outwards = rest_radius(problem, 0) <= rest_radius(problem, loops - 1);
    LoopCircles at = circles_at_zero(loops);
    const std::size_t inner = outwards ? 0 : loops - 1;
    at.radius_mm[inner] = rest_radius(problem, inner);
    lay_outwards(problem, inner, outwards ? loops - 1 : 0, at);
    at.first_pole_z_mm = at.z_mm.front();
    at.last_pole_z_mm = at.z_mm.back();
    return at;
}

void keep_worst(Shape shape, Shape& solved) {
    const bool worse = !solved.usable() || (solved.termination == Termination::converged &&
                                            shape.termination != Termination::converged);
    if (worse) solved = std::move(shape);
}

/// A run at an end lies within what is solved, or around it. Gives how well it fits there, 0 to 1.
double lay_end(const ShapeProblem& problem, std::size_t end, std::size_t joint, LoopCircles& at) {
    if (!lies_within(problem, end, joint)) {
        lay_outwards(problem, joint, end, at);
        return 1;
    }
    const double off = std::abs(1 - lay_within(problem, end, joint, at));
    return std::clamp((never_fits - off) / (never_fits - always_fits), 0.0, 1.0);
}

void add(const LoopCircles& circles, double weight, LoopCircles& sum) {
    const double start = circles.z_mm.front();
    for (std::size_t i = 0; i < sum.radius_mm.size(); ++i) {
        sum.radius_mm[i] += weight * circles.radius_mm[i];
        sum.z_mm[i] += weight * (circles.z_mm[i] - start);
    }
    sum.first_pole_z_mm += weight * (circles.first_pole_z_mm - start);
    sum.last_pole_z_mm += weight * (circles.last_pole_z_mm - start);
}

/// Adds the circles with so many rounds held, as far as those fit; else with none.
void add_held(const YieldedFabric& fabric, const Held& held, double weight,
              const std::function<Shape(const ShapeProblem&)>& balanced, Shape& solved, LoopCircles& sum) {
    const ShapeProblem& problem = fabric.problem;
    const std::size_t loops = problem.rest_loop_mm.size();
    if (held.first + held.last + 1 >= loops) return add(all_held(problem), weight, sum);
    const Shape left = balanced(between(problem, held));
    LoopCircles at = circles_at_zero(loops);
    std::ranges::copy(left.radius_mm, at.radius_mm.begin() + static_cast<std::ptrdiff_t>(held.first));
    std::ranges::copy(left.z_mm, at.z_mm.begin() + static_cast<std::ptrdiff_t>(held.first));
    double fits = 1;
    if (held.first > 0) fits = lay_end(problem, 0, held.first, at);
    if (held.last > 0) fits = std::min(fits, lay_end(problem, loops - 1, loops - 1 - held.last, at));
    at.first_pole_z_mm = held.first > 0 ? at.z_mm.front() : left.first_pole_z_mm;
    at.last_pole_z_mm = held.last > 0 ? at.z_mm.back() : left.last_pole_z_mm;
    keep_worst(left, solved);
    add(at, weight * fits, sum);
    if (fits < 1) add_held(fabric, {}, weight * (1 - fits), balanced, solved, sum);
}

/// From 1 down to 0, without 1 itself where nothing takes part wholly.
std::vector<double> levels_of(const YieldedFabric& fabric) {
    std::vector<double> levels(fabric.from_start);
    levels.insert(levels.end(), fabric.from_end.begin(), fabric.from_end.end());
    std::ranges::sort(levels, std::greater<>());
    levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
    std::erase_if(levels, [](double level) { return level <= 0; });
    const std::size_t step = (levels.size() + most_levels - 1) / most_levels;
    std::vector<double> kept;
    for (std::size_t i = 0; i < levels.size(); i += step) kept.push_back(levels[i]);
    return kept;
}

}  // namespace

LoopCircles lying_rounds(const YieldedFabric& fabric,
                         const std::function<Shape(const ShapeProblem&)>& balanced, Shape& solved) {
    const std::vector<double> levels = levels_of(fabric);
    const std::size_t loops = fabric.problem.rest_loop_mm.size();
    LoopCircles mean = circles_at_zero(loops);
    const double none = levels.empty() ? 1 : 1 - levels.front();
    if (none > 0) add_held(fabric, {}, none, balanced, solved, mean);
    for (std::size_t k = 0; k < levels.size(); ++k) {
        const double below = k + 1 < levels.size() ? levels[k + 1] : 0;
        add_held(fabric, held_at(fabric, levels[k]), levels[k] - below, balanced, solved, mean);
    }
    return mean;
}

}  // namespace roundwright
