#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/shape/fabric/fabric_problem.h"

namespace roundwright {

/// An edge of one triangle, where fabric ends, or of two.
struct FabricEdge {
    std::array<std::int32_t, 2> nodes{};                    ///< the lower one first
    std::array<std::int32_t, 2> triangles{no_one, no_one};  ///< which run it from the first node, and back
    std::array<std::int32_t, 2> opposite{no_one, no_one};   ///< third node of each

    static constexpr std::int32_t no_one = -1;
    [[nodiscard]] bool is_open() const { return triangles[0] == no_one || triangles[1] == no_one; }
};

/// How the triangles of a piece hang together.
struct FabricTopology {
    std::vector<FabricEdge> edges;  ///< sorted by their nodes
    /// Edge k of a triangle is the one between its nodes k and k + 1.
    std::vector<std::array<std::int32_t, 3>> edges_of_triangle;
};

/// Nothing where a triangle meets itself, where three share an edge, or where two neighbours have different
/// sides out. All nodes must be there.
[[nodiscard]] std::optional<FabricTopology> topology_of(const FabricProblem& problem);

}  // namespace roundwright
