#include "core/shape/fabric_signs.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <optional>

#include "core/shape/fabric_limits.h"
#include "core/shape/growth.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

using std::numbers::pi;

namespace {

/// A neck has at most this part of the stitches of the widest round on either side.
constexpr double neck_part = 0.9;

/// Turn of the meridian at loop i in degrees: positive where the surface bulges outwards.
double turn_degrees(const Shape& shape, std::size_t i) {
    if (i == 0 || i + 1 >= shape.radius_mm.size()) return 0;
    const double before =
        std::atan2(shape.z_mm[i] - shape.z_mm[i - 1], shape.radius_mm[i] - shape.radius_mm[i - 1]);
    const double after =
        std::atan2(shape.z_mm[i + 1] - shape.z_mm[i], shape.radius_mm[i + 1] - shape.radius_mm[i]);
    return std::remainder(after - before, 2 * pi) * 180 / pi;
}

/// How much more it turns there than on the mean of both sides.
double edge_degrees(const Shape& shape, std::size_t i) {
    const double beside = (turn_degrees(shape, i - 1) + turn_degrees(shape, i + 1)) / 2;
    return turn_degrees(shape, i) - beside;
}

/// Whether the solved fabric folds there, more sharply than at the next round on either side. The rounds at a
/// pole turn as they must.
bool folds(const Shape& shape, std::size_t i) {
    if (i < 2 || i + 2 >= shape.radius_mm.size()) return false;
    const double here = edge_degrees(shape, i);
    const double turn = turn_degrees(shape, i);
    return std::min(std::abs(here), std::abs(turn)) > edge_above_turn_degrees && here * turn > 0 &&
           here * here > here * edge_degrees(shape, i - 1) && here * here > here * edge_degrees(shape, i + 1);
}

/// The growth of round i + 1 less that of round i, which ends in loop i.
double growth_change(const ShapeProblem& problem, std::size_t i) {
    const auto& loops = problem.rest_loop_mm;
    const auto& heights = problem.rest_height_mm;
    if (i < 2 || i + 1 >= loops.size()) return 0;
    return growth_ratio(loops[i], loops[i + 1], heights[i]) -
           growth_ratio(loops[i - 1], loops[i], heights[i - 1]);
}

FabricSign sign_at(FabricSignKind kind, const ShapeProblem& problem, const Shape& shape, std::size_t i) {
    FabricSign sign;
    sign.kind = kind;
    sign.round = static_cast<int>(i) - 1;
    sign.stretch = shape.course_stretch[i];
    sign.turn_degrees = turn_degrees(shape, i);
    sign.growth_change = growth_change(problem, i);
    sign.width_mm = 2 * shape.radius_mm[i];
    sign.relaxed_width_mm = problem.rest_loop_mm[i] / pi;
    return sign;
}

/// Where a wall stands on a base that lies flat, or a brim lies around it, an edge is meant.
bool is_foot_of_wall(const ShapeProblem& problem, const Shape& shape, std::size_t i) {
    constexpr double level = 0.1;
    const auto lies_level = [&](std::size_t round) {
        const double rise = shape.z_mm[round + 1] - shape.z_mm[round];
        return std::abs(rise) <= level * problem.rest_height_mm[round];
    };
    return !(problem.area_stretch > 0) && (lies_level(i - 1) || lies_level(i));
}

/// Outwards, or inwards, or not at all.
std::optional<FabricSignKind> edge(const ShapeProblem& problem, const Shape& shape, std::size_t i) {
    const double change = growth_change(problem, i);
    if (std::abs(change) > edge_above_growth_change)
        return change < 0 ? FabricSignKind::ridge : FabricSignKind::crease;
    if (!folds(shape, i) || is_foot_of_wall(problem, shape, i)) return {};
    return turn_degrees(shape, i) > 0 ? FabricSignKind::ridge : FabricSignKind::crease;
}

/// For every loop whether it is the narrow place between two wider ones.
std::vector<bool> narrow_places(const std::vector<double>& loops) {
    std::vector<double> widest_above(loops.rbegin(), loops.rend());
    std::partial_sum(widest_above.begin(), widest_above.end(), widest_above.begin(),
                     [](double a, double b) { return std::max(a, b); });
    std::reverse(widest_above.begin(), widest_above.end());
    std::vector<bool> narrow(loops.size(), false);
    double widest_below = loops.front();
    for (std::size_t i = 1; i + 1 < loops.size(); ++i) {
        narrow[i] = loops[i] <= loops[i - 1] && loops[i] <= loops[i + 1] &&
                    loops[i] <= neck_part * std::min(widest_below, widest_above[i]);
        widest_below = std::max(widest_below, loops[i]);
    }
    return narrow;
}

}  // namespace

std::vector<FabricSign> fabric_signs(const ShapeProblem& problem, const Shape& shape) {
    std::vector<FabricSign> signs;
    if (!shape.usable() || shape.radius_mm.size() != problem.rest_loop_mm.size()) return signs;
    const std::vector<bool> narrow = narrow_places(problem.rest_loop_mm);
    for (std::size_t i = 1; i < shape.radius_mm.size(); ++i) {
        const double stretch = std::max(shape.course_stretch[i], shape.wale_stretch[i - 1]);
        if (problem.area_stretch > 0 && stretch > gaps_above_stretch) {
            signs.push_back(sign_at(FabricSignKind::gaps, problem, shape, i));
            signs.back().stretch = stretch;
        }
        const auto kind = edge(problem, shape, i);
        if (kind && !narrow[i]) signs.push_back(sign_at(*kind, problem, shape, i));
        if (shape.course_stretch[i] > neck_widens_above_stretch && narrow[i])
            signs.push_back(sign_at(FabricSignKind::widening_neck, problem, shape, i));
    }
    return signs;
}

}  // namespace roundwright
