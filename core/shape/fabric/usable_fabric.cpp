#include "core/shape/fabric/usable_fabric.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

namespace roundwright {

namespace {

constexpr double farthest_mm = 1e5;
constexpr double softest = 1e-6;  ///< of the course stiffness
/// Of the square of its longest edge: thinner triangles are none.
constexpr double thinnest = 1e-6;

bool is_positive(double value) { return std::isfinite(value) && value > 0; }
bool is_share(double value) { return value >= 0 && value <= 1; }

bool has_usable_constants(const FabricProblem& problem) {
    const double least = softest * problem.course_stiffness;
    return is_positive(problem.stitch_width_mm) && is_positive(problem.round_height_mm) &&
           is_positive(problem.course_stiffness) && is_positive(problem.wale_stiffness) &&
           is_positive(problem.shear_stiffness) && problem.wale_stiffness > least &&
           problem.shear_stiffness > least && is_share(problem.compression_factor) &&
           std::isfinite(problem.bending_stiffness) && problem.bending_stiffness >= 0 &&
           std::isfinite(problem.area_stretch) && problem.area_stretch >= 0 && problem.area_stretch <= 1;
}

bool has_area(const FabricTriangle& triangle) {
    const Vec2 d1 = triangle.rest[1] - triangle.rest[0];
    const Vec2 d2 = triangle.rest[2] - triangle.rest[0];
    const double area = d1.x() * d2.y() - d1.y() * d2.x();
    const double longest = std::max({d1.squaredNorm(), d2.squaredNorm(), (d2 - d1).squaredNorm()});
    return std::isfinite(longest) && longest < farthest_mm * farthest_mm && area > thinnest * longest;
}

bool are_nodes(const FabricProblem& problem, std::span<const std::int32_t> nodes) {
    return std::ranges::all_of(nodes, [&](std::int32_t node) { return node >= 0 && node < problem.nodes; });
}

bool are_all_in_triangles(const FabricProblem& problem) {
    std::vector<char> met(static_cast<std::size_t>(problem.nodes), 0);
    for (const FabricTriangle& triangle : problem.triangles)
        for (const std::int32_t node : triangle.nodes) met[static_cast<std::size_t>(node)] = 1;
    return std::ranges::all_of(met, [](char is_met) { return is_met != 0; });
}

}  // namespace

bool is_usable(const FabricProblem& problem) {
    constexpr std::int32_t most_nodes = std::numeric_limits<std::int32_t>::max() / 16;
    if (problem.nodes < 3 || problem.nodes > most_nodes || problem.triangles.empty()) return false;
    const auto is_sound = [&](const FabricTriangle& t) { return are_nodes(problem, t.nodes) && has_area(t); };
    const auto is_loop = [&](const FabricLoop& loop) { return loop.size() >= 3 && are_nodes(problem, loop); };
    return has_usable_constants(problem) && std::ranges::all_of(problem.triangles, is_sound) &&
           are_nodes(problem, problem.fixed) && std::ranges::all_of(problem.caps, is_loop) &&
           (problem.stuffed.empty() || problem.stuffed.size() == problem.triangles.size()) &&
           std::ranges::all_of(problem.stuffed, is_share) && are_all_in_triangles(problem);
}

bool is_usable_start(const FabricProblem& problem, std::span<const Vec3> start) {
    return start.size() == static_cast<std::size_t>(problem.nodes) &&
           std::ranges::all_of(start, [](const Vec3& node) {
               return node.allFinite() && node.cwiseAbs().maxCoeff() < farthest_mm;
           });
}

}  // namespace roundwright
