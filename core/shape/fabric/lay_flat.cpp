#include "core/shape/fabric/lay_flat.h"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <utility>

#include "core/gauge/flat_limits.h"
#include "core/shape/fabric/landmark_scaling.h"
#include "core/shape/fabric/solve_fabric.h"
#include "core/shape/oval_plan.h"
#include "core/shape/yield_flat.h"

namespace roundwright {
namespace {

/// Beside loops of stiffness 1: heights that hold.
constexpr double holding_stiffness = 20;
/// Stitches lean by this share of their height before they push back. A guess: soles of six more a round that
/// lie flat by common practice need 0.5 beside the ends of a chain of four.
constexpr double most_slant = 0.5;

/// The first rounds by themselves, and which nodes of the whole theirs are.
struct FlatPart {
    FabricProblem problem;
    std::vector<std::int32_t> nodes;
};

FlatPart first_rounds(const StitchCells& cells, std::size_t rounds) {
    FlatPart part{cells.problem, {}};
    auto& triangles = part.problem.triangles;
    triangles.resize(static_cast<std::size_t>(cells.first_triangle[rounds - 1].back()));
    std::vector<std::int32_t> number(static_cast<std::size_t>(cells.problem.nodes), -1);
    for (FabricTriangle& triangle : triangles)
        for (std::int32_t& node : triangle.nodes) {
            std::int32_t& own = number[static_cast<std::size_t>(node)];
            if (own < 0) {
                own = static_cast<std::int32_t>(part.nodes.size());
                part.nodes.push_back(node);
            }
            node = own;
        }
    part.problem.nodes = static_cast<std::int32_t>(part.nodes.size());
    part.problem.wale_stiffness = holding_stiffness * part.problem.course_stiffness;
    part.problem.compression_factor = 1;
    return part;
}

/// In the plane y = 0; the x axis, the z axis and the outside, which is below, are a right-handed frame.
double area_from_below(const FabricTriangle& triangle, const std::vector<Vec3>& nodes) {
    const auto at = [&](std::size_t k) { return nodes[static_cast<std::size_t>(triangle.nodes[k])]; };
    return (at(1) - at(0)).cross(at(2) - at(0)).y() / -2;
}

/// Onto the plane of their largest spread, outside below.
void flatten(const FabricProblem& problem, std::vector<Vec3>& nodes) {
    Vec3 middle = Vec3::Zero();
    for (const Vec3& node : nodes) middle += node / static_cast<double>(nodes.size());
    Eigen::Matrix3d moments = Eigen::Matrix3d::Zero();
    for (const Vec3& node : nodes) moments += (node - middle) * (node - middle).transpose();
    const Eigen::Matrix3d axes = Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d>(moments).eigenvectors();
    for (Vec3& node : nodes) {
        const Vec3 from = node - middle;
        node = Vec3(axes.col(2).dot(from), 0, axes.col(1).dot(from));
    }
    double area = 0;
    for (const FabricTriangle& triangle : problem.triangles) area += area_from_below(triangle, nodes);
    if (area < 0)
        for (Vec3& node : nodes) node.z() = -node.z();
}

bool lies_folded(const FabricProblem& problem, const std::vector<Vec3>& nodes) {
    return std::ranges::any_of(problem.triangles, [&](const FabricTriangle& triangle) {
        return !(area_from_below(triangle, nodes) > 0);
    });
}

/// Where the nodes of a part lie in balance in a plane.
std::optional<std::vector<Vec3>> plane_balance(const FabricProblem& problem, const std::stop_token& stop) {
    std::vector<Vec3> start = landmark_scaling(problem);
    flatten(problem, start);
    if (lies_folded(problem, start)) return std::nullopt;
    FabricOptions options;
    options.stop = stop;
    options.seeks_waves = false;
    FabricShape found = solve_fabric(problem, start, options);
    if (found.termination != Termination::converged || lies_folded(problem, found.nodes)) return std::nullopt;
    return std::move(found.nodes);
}

/// What turns the relaxed triangle into the one in the plane, but for a turn of the whole: [t11 t12; 0 t22],
/// the course keeps its direction. Heights give as much as they do within a wall.
void yield(FabricTriangle& relaxed, const std::array<Vec2, 3>& plane, double part) {
    Eigen::Matrix2d from, to;
    from << relaxed.rest[1] - relaxed.rest[0], relaxed.rest[2] - relaxed.rest[0];
    to << plane[1] - plane[0], plane[2] - plane[0];
    const Eigen::Matrix2d change = to * from.inverse();
    const double along = change.col(0).norm();
    const double slant = change.col(0).dot(change.col(1)) / along;
    const double up = change.determinant() / along;
    Eigen::Matrix2d yielded;
    yielded << std::clamp(along, 1 - pushed_flat_share, 1 + unpulled_above_share),
        std::clamp(slant, -most_slant, most_slant), 0,
        std::clamp(up, 1 - pushed_flat_share, 1 + pushed_flat_share);
    yielded = (1 - part) * Eigen::Matrix2d::Identity() + part * yielded;
    for (Vec2& corner : relaxed.rest) corner = yielded * corner;
}

}  // namespace

std::vector<double> flat_parts_of_oval(const ShapeProblem& problem, bool rows) {
    if (!starts_oval(problem) || !can_lie_flat(problem)) return {};
    std::vector<double> parts = yielded_flat(ends_as_disc(problem, rows ? 1 : 2)).from_start;
    return !parts.empty() && parts.front() > 0 ? parts : std::vector<double>{};
}

std::optional<std::vector<Vec3>> lay_flat(StitchCells& cells, const std::vector<double>& parts,
                                          const std::stop_token& stop) {
    const auto rounds = static_cast<std::size_t>(
        std::ranges::find_if(parts, [](double part) { return !(part > 0); }) - parts.begin());
    if (rounds == 0 || rounds > cells.rounds.size()) return std::nullopt;
    const FlatPart part = first_rounds(cells, rounds);
    std::optional<std::vector<Vec3>> plane = plane_balance(part.problem, stop);
    if (!plane) return std::nullopt;
    const auto in_plane = [&](const FabricTriangle& triangle) {
        std::array<Vec2, 3> corners;
        for (std::size_t k = 0; k < 3; ++k) {
            const Vec3& at = (*plane)[static_cast<std::size_t>(triangle.nodes[k])];
            corners[k] = {at.x(), at.z()};
        }
        return corners;
    };
    for (std::size_t round = 0; round < rounds; ++round) {
        const auto first = static_cast<std::size_t>(cells.first_triangle[round].front());
        const auto last = static_cast<std::size_t>(cells.first_triangle[round].back());
        for (std::size_t t = first; t < last; ++t)
            yield(cells.problem.triangles[t], in_plane(part.problem.triangles[t]), parts[round]);
    }
    if (part.nodes.size() != static_cast<std::size_t>(cells.problem.nodes)) return std::nullopt;
    std::vector<Vec3> nodes(part.nodes.size(), Vec3::Zero());
    for (std::size_t k = 0; k < part.nodes.size(); ++k)
        nodes[static_cast<std::size_t>(part.nodes[k])] = (*plane)[k];
    return nodes;
}

}  // namespace roundwright
