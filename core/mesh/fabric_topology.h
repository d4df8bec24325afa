#pragma once

#include <cstdint>
#include <vector>

#include "core/mesh/stitch_layout.h"
#include "core/mesh/stitch_relief.h"

namespace roundwright {

/// A row of vertices around the piece, in the order worked; one vertex: a pole.
struct VertexRow {
    std::uint32_t first = 0;
    std::uint32_t size = 0;

    [[nodiscard]] std::uint32_t at(std::uint32_t k) const { return first + (size == 1 ? 0 : k % size); }
};

/// Which ends of the piece are closed to a point, and whether an open one gets an inside.
struct FabricEnds {
    bool pole_below = false;
    bool pole_above = false;
    bool inside = false;  ///< a second skin, joined to the first at the rims
};

/// Vertices and triangles of a piece's fabric, without their places. Every edge is shared by exactly two
/// triangles if both ends are closed or the piece has an inside; triangles are anticlockwise from outside.
struct FabricTopology {
    std::vector<std::vector<VertexRow>> rows;  ///< of round i: its rows from just above its lower edge up to
                                               ///< its upper edge
    VertexRow lowest;                          ///< the edge below the first round
    VertexRow apex;                            ///< the pole above, if closed; size 0 if not
    std::vector<VertexRow> inner;              ///< of edge i = 0..rounds, and the apex's if closed
    std::uint32_t vertices = 0;
    std::vector<std::uint32_t> indices;
    std::vector<std::int32_t> stitch_of_triangle;

    [[nodiscard]] const VertexRow& edge(std::size_t i) const { return i == 0 ? lowest : rows[i - 1].back(); }
};

/// `first_stitch_of_round` gives the number of a round's first stitch, for `stitch_of_triangle`.
[[nodiscard]] FabricTopology fabric_topology(const std::vector<LaidRound>& rounds, const ReliefGrid& grid,
                                             const FabricEnds& ends,
                                             const std::vector<std::uint32_t>& first_stitch_of_round);

}  // namespace roundwright
