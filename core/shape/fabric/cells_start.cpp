#include "core/shape/fabric/cells_start.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/shape/fabric/landmark_scaling.h"
#include "core/shape/fabric/open_edges.h"
#include "core/shape/fabric/stand_upright.h"

namespace roundwright {
namespace {

constexpr double two_pi = 2 * std::numbers::pi;

/// Nodes that lie on several edges take the mean of their places there.
class Places {
  public:
    explicit Places(std::int32_t nodes)
        : sum_(static_cast<std::size_t>(nodes), Vec3::Zero()), times_(sum_.size()) {}

    void put(std::int32_t node, const Vec3& place) {
        sum_[static_cast<std::size_t>(node)] += place;
        ++times_[static_cast<std::size_t>(node)];
    }
    std::vector<Vec3> means() && {
        for (std::size_t k = 0; k < sum_.size(); ++k)
            if (times_[k] > 0) sum_[k] /= times_[k];
        return std::move(sum_);
    }

  private:
    std::vector<Vec3> sum_;
    std::vector<int> times_;
};

/// How far up the piece, in rounds, an edge lies at a share of the way around.
double climb(const StitchCells& cells, std::size_t edge, double share) {
    const auto level = static_cast<double>(edge);
    const bool climbs = cells.edges[edge].nodes.front().node != cells.edges[edge].nodes.back().node;
    return cells.spiral && climbs ? level - 0.5 + share : level;
}

Vec2 on_meridian(const Shape& round, double level) {
    const auto last = round.radius_mm.size() - 1;
    const auto below = std::min(static_cast<std::size_t>(std::max(0.0, level)), last - 1);
    const double t = level - static_cast<double>(below);
    const auto between = [&](const std::vector<double>& of) {
        return of[below] + t * (of[below + 1] - of[below]);
    };
    return {std::max(0.0, between(round.radius_mm)), between(round.z_mm)};
}

/// Out to the corners of a polygon that is as long around as its circle.
double corner_factor(std::size_t corners) {
    const double half = std::numbers::pi / static_cast<double>(std::max<std::size_t>(3, corners));
    return half / std::sin(half);
}

}  // namespace

std::vector<Vec3> revolved_start(const StitchCells& cells, const Shape& round) {
    Places places(cells.problem.nodes);
    const std::vector<double>& turns = cells.turns;
    for (std::size_t edge = 0; edge < cells.edges.size(); ++edge) {
        const CellEdge& line = cells.edges[edge];
        const double factor = corner_factor(line.nodes.size() - 1);
        for (const EdgeNode& node : line.nodes) {
            const double share = node.at / line.loops;
            const Vec2 at = on_meridian(round, climb(cells, edge, share));
            const double angle = std::numbers::pi - two_pi * (turns[edge] + share);
            const double radius = factor * at.x();
            places.put(node.node, {radius * std::sin(angle), at.y(), radius * std::cos(angle)});
        }
    }
    if (cells.pole_above) places.put(*cells.pole_above, {0, round.last_pole_z_mm, 0});
    return std::move(places).means();
}

double enclosed_mm3(const StitchCells& cells, std::span<const Vec3> nodes) {
    const auto at = [&](std::int32_t node) { return nodes[static_cast<std::size_t>(node)]; };
    double six_volumes = 0;
    for (const FabricTriangle& triangle : cells.problem.triangles)
        six_volumes += at(triangle.nodes[0]).dot(at(triangle.nodes[1]).cross(at(triangle.nodes[2])));
    for (const FabricLoop& loop : open_edges(cells.problem)) {
        Vec3 centre = Vec3::Zero();
        for (const std::int32_t node : loop) centre += at(node) / static_cast<double>(loop.size());
        for (std::size_t k = 0; k < loop.size(); ++k)
            six_volumes += at(loop[(k + 1) % loop.size()]).dot(at(loop[k]).cross(centre));
    }
    return six_volumes / 6;
}

std::vector<Vec3> waved(const StitchCells& cells, std::span<const Vec3> nodes, int waves,
                        std::span<const double> amplitude_mm) {
    std::vector<Vec3> normals(nodes.size(), Vec3::Zero());
    const auto at = [&](std::int32_t node) { return nodes[static_cast<std::size_t>(node)]; };
    for (const FabricTriangle& t : cells.problem.triangles)
        for (const std::int32_t node : t.nodes)
            normals[static_cast<std::size_t>(node)] +=
                (at(t.nodes[1]) - at(t.nodes[0])).cross(at(t.nodes[2]) - at(t.nodes[0]));
    std::vector<Vec3> moved(nodes.begin(), nodes.end());
    const std::vector<double>& turns = cells.turns;
    for (std::size_t edge = 0; edge < cells.edges.size(); ++edge)
        for (const EdgeNode& node : cells.edges[edge].nodes) {
            const auto k = static_cast<std::size_t>(node.node);
            const double turn = turns[edge] + node.at / cells.edges[edge].loops;
            moved[k] =
                nodes[k] + amplitude_mm[edge] * std::cos(waves * two_pi * turn) * normals[k].normalized();
        }
    return moved;
}

std::vector<Vec3> scaled_start(const StitchCells& cells) {
    std::vector<Vec3> nodes = landmark_scaling(cells.problem);
    if (enclosed_mm3(cells, nodes) < 0)
        for (Vec3& node : nodes) node.x() = -node.x();
    stand_upright(cells, nodes);
    return nodes;
}

std::vector<Vec3> carried_start(const StitchCells& cells, const StitchCells& before,
                                std::span<const Vec3> nodes) {
    Places places(cells.problem.nodes);
    const auto on = [&](const CellEdge& line, double share) -> Vec3 {
        const double along = share * line.loops;
        auto above = std::ranges::upper_bound(line.nodes, along, {}, &EdgeNode::at);
        above = std::clamp(above, line.nodes.begin() + 1, line.nodes.end() - 1);
        const EdgeNode &low = *(above - 1), &high = *above;
        const double t = (along - low.at) / (high.at - low.at);
        return (1 - t) * nodes[static_cast<std::size_t>(low.node)] +
               t * nodes[static_cast<std::size_t>(high.node)];
    };
    const double scale = static_cast<double>(before.rounds.size()) / static_cast<double>(cells.rounds.size());
    const std::vector<double>&turns = cells.turns, &earlier = before.turns;
    for (std::size_t edge = 0; edge < cells.edges.size(); ++edge) {
        const double level = scale * static_cast<double>(edge);
        const auto below = std::min(static_cast<std::size_t>(level), before.rounds.size() - 1);
        const double t = level - static_cast<double>(below);
        for (const EdgeNode& node : cells.edges[edge].nodes) {
            const auto share = [&](std::size_t line) {
                const double moved = node.at / cells.edges[edge].loops + turns[edge] - earlier[line];
                return cells.rows || cells.spiral ? node.at / cells.edges[edge].loops
                                                  : moved - std::floor(moved);
            };
            const Vec3 low = on(before.edges[below], share(below));
            const Vec3 high = on(before.edges[below + 1], share(below + 1));
            places.put(node.node, (1 - t) * low + t * high);
        }
    }
    if (cells.pole_above) {
        const std::int32_t pole = before.pole_above.value_or(before.edges.back().nodes.front().node);
        places.put(*cells.pole_above, nodes[static_cast<std::size_t>(pole)]);
    }
    return std::move(places).means();
}

}  // namespace roundwright
