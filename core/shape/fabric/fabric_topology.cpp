#include "core/shape/fabric/fabric_topology.h"

#include <algorithm>
#include <cstddef>
#include <tuple>
#include <utility>

namespace roundwright {

namespace {

/// An edge as one triangle runs it.
struct Side {
    std::array<std::int32_t, 2> nodes{};  ///< the lower one first
    std::int32_t triangle = 0;
    std::int32_t place = 0;      ///< which edge of the triangle
    std::int32_t direction = 0;  ///< 0: from the lower node, 1: back

    [[nodiscard]] auto key() const { return std::tie(nodes, triangle, place); }
};

std::vector<Side> sides_of(const FabricProblem& problem) {
    std::vector<Side> sides;
    sides.reserve(3 * problem.triangles.size());
    for (std::size_t t = 0; t < problem.triangles.size(); ++t) {
        const auto& nodes = problem.triangles[t].nodes;
        for (std::size_t k = 0; k < 3; ++k) {
            const std::int32_t from = nodes[k];
            const std::int32_t to = nodes[(k + 1) % 3];
            sides.push_back({{std::min(from, to), std::max(from, to)},
                             static_cast<std::int32_t>(t),
                             static_cast<std::int32_t>(k),
                             from < to ? 0 : 1});
        }
    }
    std::ranges::sort(sides, {}, [](const Side& side) { return side.key(); });
    return sides;
}

}  // namespace

std::optional<FabricTopology> topology_of(const FabricProblem& problem) {
    FabricTopology topology;
    topology.edges_of_triangle.resize(problem.triangles.size());
    for (const Side& side : sides_of(problem)) {
        if (side.nodes[0] == side.nodes[1]) return {};
        if (topology.edges.empty() || topology.edges.back().nodes != side.nodes)
            topology.edges.push_back({side.nodes});
        FabricEdge& edge = topology.edges.back();
        const auto direction = static_cast<std::size_t>(side.direction);
        const auto triangle = static_cast<std::size_t>(side.triangle);
        if (edge.triangles[direction] != FabricEdge::no_one) return {};
        edge.triangles[direction] = side.triangle;
        edge.opposite[direction] =
            problem.triangles[triangle].nodes[static_cast<std::size_t>(side.place + 2) % 3];
        topology.edges_of_triangle[triangle][static_cast<std::size_t>(side.place)] =
            static_cast<std::int32_t>(topology.edges.size()) - 1;
    }
    return topology;
}

}  // namespace roundwright
