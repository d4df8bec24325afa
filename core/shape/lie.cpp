#include "core/shape/lie.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/shape/fabric_limits.h"
#include "core/shape/fabric_thickness.h"
#include "core/shape/growth.h"
#include "core/shape/meridian.h"
#include "core/shape/solve_shape.h"
#include "core/shape/wave_length.h"
#include "core/shape/yield_flat.h"

namespace roundwright {

using std::numbers::pi;

namespace {

constexpr double no_change = 1e-9;

double spare_length(const ShapeProblem& problem, const Shape& shape, std::size_t loop) {
    return std::max(0.0, rest_length_mm(problem, loop) - 2 * pi * shape.radius_mm[loop]);
}

/// What lies in waves where the loop ruffles: fabric that is not stuffed has been pushed together first.
double waving_length(const ShapeProblem& problem, std::size_t loop) {
    const double yielded = problem.area_stretch > 0 ? 0 : pushed_together_mm(problem, loop);
    return rest_length_mm(problem, loop) - yielded;
}

/// The longest circle that loop i could lie in on a flat table, given the rounds below.
std::vector<double> reachable_loops(const ShapeProblem& problem) {
    std::vector<double> reachable{rest_length_mm(problem, 0)};
    for (std::size_t i = 1; i < problem.rest_loop_mm.size(); ++i)
        reachable.push_back(
            std::min(rest_length_mm(problem, i), reachable.back() + 2 * pi * problem.rest_height_mm[i - 1]));
    return reachable;
}

bool has_waves(const ShapeProblem& problem, const Shape& shape, const std::vector<double>& reachable,
               std::size_t i) {
    const double loop = rest_length_mm(problem, i);
    const double spare = std::min(loop - reachable[i], spare_length(problem, shape, i));
    return spare > pushed_together_mm(problem, i);
}

/// One full round between two smooth ones is taken up by its neighbours: a ruffle is an edge, or goes on.
bool ruffles(const ShapeProblem& problem, const Shape& shape, const std::vector<double>& reachable,
             std::size_t i) {
    if (!has_waves(problem, shape, reachable, i)) return false;
    const bool is_edge = i + 1 == reachable.size();
    return is_edge || has_waves(problem, shape, reachable, i + 1) ||
           (i > 1 && has_waves(problem, shape, reachable, i - 1));
}

bool gathers(const ShapeProblem& problem, const Shape& shape, double growth, std::size_t i) {
    return growth < gathers_below_growth &&
           spare_length(problem, shape, i - 1) > ruffles_above_share * rest_length_mm(problem, i - 1);
}

bool stands_unstuffed(const ShapeProblem& problem) {
    return !(problem.area_stretch > 0) && !problem.limp && !problem.on_its_face;
}

/// A flattened piece does not show what its fabric would do by itself: as a cone of half angle asin g it
/// would rise by cos asin g.
double rise(const ShapeProblem& problem, const Shape& shape, double growth, double length, std::size_t i) {
    if (problem.limp || problem.on_its_face) return length * std::sqrt(1 - std::min(1.0, growth * growth));
    return std::abs(shape.z_mm[i] - shape.z_mm[i - 1]);
}

RoundLie lie_of(const ShapeProblem& problem, const Shape& shape, const std::vector<double>& reachable,
                std::size_t i) {
    const double height = problem.rest_height_mm[i - 1];
    const double below = rest_length_mm(problem, i - 1);
    const double change = rest_length_mm(problem, i) - below;
    const double length = height * (1 + shape.wale_stretch[i - 1]);
    RoundLie lie;
    lie.growth = growth_ratio(below, rest_length_mm(problem, i), height);
    lie.rise_mm = rise(problem, shape, lie.growth, length, i);
    lie.spare_length_mm = spare_length(problem, shape, i);
    if (problem.stitch_width_mm > 0) lie.flat_increase = flat_increase(height, problem.stitch_width_mm);
    const double least = no_change * rest_length_mm(problem, i);
    if (change > -least && ruffles(problem, shape, reachable, i)) {
        lie.lie = Lie::ruffles;
        lie.spare_length_mm = std::max(0.0, waving_length(problem, i) - 2 * pi * shape.radius_mm[i]);
    } else if (std::abs(change) <= least) {
        lie.lie = Lie::even;
    } else if (change > 0) {
        lie.lie = lie.rise_mm <= flat_up_to_rise * length ? Lie::lies_flat : Lie::cups;
    } else if (gathers(problem, shape, lie.growth, i)) {
        lie.lie = Lie::gathers;
        lie.spare_length_mm = spare_length(problem, shape, i - 1);
    } else {
        lie.lie = Lie::closes;
    }
    return lie;
}

double amplitude(const ShapeProblem& problem, const Shape& shape, std::size_t loop, int waves) {
    const double circle = 2 * pi * shape.radius_mm[loop];
    return circle / waves * wave_amplitude(std::max(1.0, waving_length(problem, loop) / circle));
}

/// The fewest waves, from 2 up, whose amplitude is within the round's height; a wave takes two stitches.
int wave_count(const ShapeProblem& problem, const Shape& shape, std::size_t loop) {
    const double one = amplitude(problem, shape, loop, 1);
    const double stitch = problem.stitch_width_mm > 0 ? problem.stitch_width_mm : problem.rest_height_mm[0];
    const double most = std::max(2.0, std::floor(rest_length_mm(problem, loop) / (2 * stitch)));
    return static_cast<int>(std::clamp(std::ceil(one / problem.rest_height_mm[loop - 1]), 2.0, most));
}

/// What stands without stuffing shows how it lies: flat is what has risen by no more than the fabric is thick
/// since it last turned up.
void set_flat_by_level(const ShapeProblem& problem, const Shape& shape, std::vector<RoundLie>& lies) {
    const double thickness = fabric_thickness_mm(problem);
    double level = shape.z_mm.front();
    for (std::size_t i = 1; i <= lies.size(); ++i) {
        RoundLie& lie = lies[i - 1];
        const bool lies_down = std::abs(shape.z_mm[i] - level) <= thickness;
        const bool grows = lie.lie == Lie::lies_flat || lie.lie == Lie::cups;
        if (grows) lie.lie = lies_down ? Lie::lies_flat : Lie::cups;
        const double most = grows ? flat_up_to_rise * problem.rest_height_mm[i - 1] : thickness;
        if (lie.rise_mm > most) level = shape.z_mm[i];
    }
}

/// Waves run on from round to round, so a run of ruffling rounds has as many as the round that needs most.
void set_waves(const ShapeProblem& problem, const Shape& shape, std::vector<RoundLie>& lies) {
    for (std::size_t first = 0; first < lies.size(); ++first) {
        if (lies[first].lie != Lie::ruffles) continue;
        std::size_t last = first;
        int waves = 2;
        for (; last < lies.size() && lies[last].lie == Lie::ruffles; ++last)
            waves = std::max(waves, wave_count(problem, shape, last + 1));
        for (std::size_t round = first; round < last; ++round) {
            lies[round].waves = waves;
            lies[round].wave_height_mm = 2 * amplitude(problem, shape, round + 1, waves);
        }
        first = last;
    }
}

}  // namespace

std::vector<RoundLie> lie_of_rounds(const ShapeProblem& problem, const Shape& shape) {
    std::vector<RoundLie> lies;
    if (!shape.usable() || shape.radius_mm.size() != problem.rest_loop_mm.size()) return lies;
    const std::vector<double> reachable = reachable_loops(problem);
    for (std::size_t i = 1; i < problem.rest_loop_mm.size(); ++i)
        lies.push_back(lie_of(problem, shape, reachable, i));
    if (stands_unstuffed(problem)) set_flat_by_level(problem, shape, lies);
    set_waves(problem, shape, lies);
    return lies;
}

}  // namespace roundwright
