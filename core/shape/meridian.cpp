#include "core/shape/meridian.h"

#include <algorithm>
#include <cmath>

namespace roundwright {

namespace {

/// Lengths in mm outside this range are a mistake, and would overflow or vanish in products of them.
constexpr double shortest_mm = 1e-6;
constexpr double longest_mm = 1e9;
constexpr double most_stretch = 10;

bool is_length(double mm) { return mm >= shortest_mm && mm <= longest_mm; }

bool ends_are_usable(const ShapeProblem& problem) {
    const bool drawn =
        problem.first == MeridianEnd::drawn_closed || problem.last == MeridianEnd::drawn_closed;
    const bool has_first_fan =
        problem.first == MeridianEnd::drawn_closed && is_length(problem.first_fan_height_mm);
    const bool only_first = has_first_fan && problem.last != MeridianEnd::drawn_closed;
    return !drawn || only_first || is_length(problem.fan_height_mm);
}

double first_fan_height(const ShapeProblem& problem) {
    return problem.first_fan_height_mm > 0 ? problem.first_fan_height_mm : problem.fan_height_mm;
}

/// The stuffing fills the fans at the ends of the rounds that it lies in.
void take_stuffed(const ShapeProblem& problem, Meridian& meridian) {
    if (!problem.stuffed_rounds) return;
    const RoundSpan& rounds = *problem.stuffed_rounds;
    const std::size_t before = node_of_first_loop(problem);
    const auto round = [](int number) { return static_cast<std::size_t>(std::max(0, number)); };
    if (rounds.first > 0) meridian.first_stuffed = before + round(rounds.first);
    if (round(rounds.last) + 1 < problem.rest_height_mm.size())
        meridian.after_stuffed = before + round(rounds.last) + 1;
}

}  // namespace

bool is_pole(const ShapeProblem& problem, std::size_t loop) {
    return (loop == 0 && problem.first == MeridianEnd::pole) ||
           (loop + 1 == problem.rest_loop_mm.size() && problem.last == MeridianEnd::pole);
}

double rest_length_mm(const ShapeProblem& problem, std::size_t loop) {
    return is_pole(problem, loop) ? 0 : problem.rest_loop_mm[loop];
}

bool is_usable(const ShapeProblem& problem) {
    const auto& loops = problem.rest_loop_mm;
    const auto& heights = problem.rest_height_mm;
    if (heights.empty() || loops.size() != heights.size() + 1) return false;
    if (!std::all_of(heights.begin(), heights.end(), is_length)) return false;
    for (std::size_t i = 0; i < loops.size(); ++i) {
        if (!is_pole(problem, i) && !is_length(loops[i])) return false;
    }
    // Two poles and one round between them enclose nothing and have no loop at all.
    if (loops.size() == 2 && problem.first == MeridianEnd::pole && problem.last == MeridianEnd::pole)
        return false;
    return ends_are_usable(problem) && problem.area_stretch >= 0 && problem.area_stretch <= most_stretch;
}

std::size_t node_of_first_loop(const ShapeProblem& problem) {
    return problem.first == MeridianEnd::drawn_closed ? 1 : 0;
}

Meridian meridian_of(const ShapeProblem& problem) {
    Meridian meridian;
    meridian.rest_loop.reserve(problem.rest_loop_mm.size() + 2);
    meridian.rest_height.reserve(problem.rest_loop_mm.size() + 1);
    if (problem.first == MeridianEnd::drawn_closed) {
        meridian.rest_loop.push_back(0);
        meridian.rest_height.push_back(first_fan_height(problem));
    }
    meridian.rest_loop.insert(meridian.rest_loop.end(), problem.rest_loop_mm.begin(),
                              problem.rest_loop_mm.end());
    meridian.rest_height.insert(meridian.rest_height.end(), problem.rest_height_mm.begin(),
                                problem.rest_height_mm.end());
    if (problem.last == MeridianEnd::drawn_closed) {
        meridian.rest_loop.push_back(0);
        meridian.rest_height.push_back(problem.fan_height_mm);
    }
    meridian.first_on_axis = problem.first != MeridianEnd::open;
    meridian.last_on_axis = problem.last != MeridianEnd::open;
    if (meridian.first_on_axis) meridian.rest_loop.front() = 0;
    if (meridian.last_on_axis) meridian.rest_loop.back() = 0;
    take_stuffed(problem, meridian);
    return meridian;
}

Meridian coarsened(const Meridian& fine) {
    Meridian coarse;
    coarse.first_on_axis = fine.first_on_axis;
    coarse.last_on_axis = fine.last_on_axis;
    // Half a pair that is stuffed is taken for the whole of it.
    coarse.first_stuffed = fine.first_stuffed / 2;
    if (fine.after_stuffed <= fine.segments()) coarse.after_stuffed = (fine.after_stuffed + 1) / 2;
    coarse.rest_loop.push_back(fine.rest_loop.front());
    const std::size_t segments = fine.segments();
    for (std::size_t s = 0; s < segments; s += 2) {
        const bool pair = s + 1 < segments;
        const std::size_t node = pair ? s + 2 : s + 1;
        coarse.rest_height.push_back(fine.rest_height[s] + (pair ? fine.rest_height[s + 1] : 0));
        const bool inside = node + 1 < fine.nodes();
        coarse.rest_loop.push_back(
            inside ? (fine.rest_loop[node - 1] + 2 * fine.rest_loop[node] + fine.rest_loop[node + 1]) / 4
                   : fine.rest_loop[node]);
    }
    return coarse;
}

}  // namespace roundwright
