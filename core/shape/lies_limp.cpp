#include "core/shape/lies_limp.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <numeric>

#include "core/shape/fabric_limits.h"
#include "core/shape/growth.h"
#include "core/shape/meridian.h"

namespace roundwright {

namespace {

/// Rounds that widen at least so fast hold a cone open (two increases a round make 0.32), and walls stand up
/// to this share of their opening's width. A closed piece lies on its face where it rises by less than this
/// share of its width. Starting values of our own.
constexpr double widens_above_growth = 0.25;
constexpr double standing_wall_share = 0.5;
constexpr double face_rise_share = 0.25;
/// On a base that lies flat and is nearly as wide as the opening, walls stand higher: a published cup of
/// thirty stitches on five flat rounds is 1.6 times as high as it is wide ("Ghost / pumpkin egg cozy"). A leg
/// closes with fewer rounds. The limits beyond that piece are starting values of our own.
constexpr double standing_wall_share_on_base = 2;
constexpr std::size_t base_from_rounds = 5;
constexpr double base_share = 0.8;
/// A piece of so few rounds, or as short as those, is hardly longer than its fabric is thick, and keeps its
/// form.
constexpr std::size_t stiff_up_to_rounds = 3;

double growth(const ShapeProblem& problem, std::size_t i) {
    return growth_ratio(rest_length_mm(problem, i - 1), rest_length_mm(problem, i),
                        problem.rest_height_mm[i - 1]);
}

/// What a round of this growth rises, as a cone of half angle asin g does; nothing where it lies flat.
double rise_mm(double growth, double height_mm) {
    const double rise = std::sqrt(1 - std::min(1.0, growth * growth));
    return rise > flat_up_to_rise ? rise * height_mm : 0;
}

double widest_mm(const ShapeProblem& problem) {
    return *std::ranges::max_element(problem.rest_loop_mm) / std::numbers::pi;
}

double whole_rise_mm(const ShapeProblem& problem) {
    double sum = 0;
    for (std::size_t i = 1; i < problem.rest_loop_mm.size(); ++i)
        sum += rise_mm(growth(problem, i), problem.rest_height_mm[i - 1]);
    return sum;
}

/// Height of the rounds that do not widen towards the wider end.
double wall_mm(const ShapeProblem& problem) {
    const double way = problem.rest_loop_mm.back() < rest_length_mm(problem, 0) ? -1 : 1;
    double sum = 0;
    for (std::size_t i = 1; i < problem.rest_loop_mm.size(); ++i) {
        const double g = growth(problem, i);
        if (way * g < widens_above_growth) sum += rise_mm(g, problem.rest_height_mm[i - 1]);
    }
    return sum;
}

bool is_closed(const ShapeProblem& problem) {
    return problem.first != MeridianEnd::open && problem.last != MeridianEnd::open;
}

bool is_low(const ShapeProblem& problem) {
    return whole_rise_mm(problem) <= face_rise_share * widest_mm(problem);
}

bool is_small(const ShapeProblem& problem) {
    const auto& heights = problem.rest_height_mm;
    const double length = std::accumulate(heights.begin(), heights.end(), 0.0);
    return heights.size() <= stiff_up_to_rounds || length < stiff_up_to_rounds * problem.stitch_width_mm;
}

/// How many rounds from the start lie flat.
std::size_t rounds_of_base(const ShapeProblem& problem) {
    std::size_t i = 1;
    while (i < problem.rest_loop_mm.size() && growth(problem, i) > 0 &&
           rise_mm(growth(problem, i), problem.rest_height_mm[i - 1]) == 0)
        ++i;
    return i - 1;
}

bool has_base(const ShapeProblem& problem, double mouth_mm) {
    const std::size_t rounds = rounds_of_base(problem);
    return rounds >= base_from_rounds &&
           rest_length_mm(problem, rounds) / std::numbers::pi >= base_share * mouth_mm;
}

bool has_high_walls(const ShapeProblem& problem) {
    const double mouth = std::max(rest_length_mm(problem, 0), problem.rest_loop_mm.back()) / std::numbers::pi;
    const double share = has_base(problem, mouth) ? standing_wall_share_on_base : standing_wall_share;
    return wall_mm(problem) > share * mouth;
}

}  // namespace

bool lies_limp(const ShapeProblem& problem) {
    if (problem.rest_height_mm.empty() || problem.area_stretch > 0) return false;
    if (problem.sewn_straight) return true;
    if (is_small(problem)) return false;
    return is_closed(problem) ? !is_low(problem) : has_high_walls(problem);
}

bool lies_on_its_face(const ShapeProblem& problem) {
    return problem.area_stretch <= 0 && !problem.sewn_straight && is_closed(problem) && !is_small(problem) &&
           is_low(problem);
}

void lay_unstuffed(ShapeProblem& problem, Joining joining) {
    const bool loops = joining != Joining::rows;
    problem.limp = loops && lies_limp(problem);
    problem.on_its_face = loops && lies_on_its_face(problem);
}

}  // namespace roundwright
