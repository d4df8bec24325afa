#pragma once

#include <cstdint>
#include <vector>

#include "core/mesh/fabric_geometry.h"
#include "core/mesh/stitch_cords.h"
#include "core/mesh/stitch_layout.h"
#include "core/mesh/stitch_relief.h"

namespace roundwright {

/// A row of vertices around the piece, in the order worked; one vertex: a pole.
struct VertexRow {
    std::uint32_t first = 0;
    std::uint32_t size = 0;

    [[nodiscard]] std::uint32_t at(std::uint32_t k) const { return first + (size == 1 ? 0 : k % size); }
};

/// One skin of a piece's fabric.
struct FabricSkin {
    VertexRow lowest;                          ///< the edge below the first round
    std::vector<std::vector<VertexRow>> rows;  ///< of round i: its rows from just above its lower edge up to
                                               ///< its upper edge
    VertexRow pole_below, pole_above;          ///< of the fans; size 0 without one

    [[nodiscard]] const VertexRow& edge(std::size_t i) const { return i == 0 ? lowest : rows[i - 1].back(); }
};

/// Vertices and triangles of a piece's fabric, without their places. A piece that is not closed gets an inner
/// skin, joined to the outer one at the rims, so that every edge is always shared by exactly two triangles,
/// which are anticlockwise from outside.
struct FabricTopology {
    FabricSkin outer;
    FabricSkin inner;  ///< without rows for a closed piece
    std::uint32_t vertices = 0;
    std::vector<std::uint32_t> indices;
    std::vector<std::int32_t> stitch_of_triangle;
    std::vector<std::uint16_t> places;  ///< as `Mesh::places`
    std::vector<std::uint8_t> faces;    ///< as `Mesh::faces`
};

/// What a fabric's stitches are called and show.
struct FabricStitches {
    std::vector<std::uint32_t> first_of_round;  ///< number of each round's first stitch; rounds + 1 entries
    std::vector<StitchFace> faces;              ///< of each stitch, on the outside

    [[nodiscard]] std::int32_t number_of(const LaidStitch& cell) const;
    [[nodiscard]] StitchFace face_of(const LaidStitch& cell) const;
};

[[nodiscard]] FabricTopology fabric_topology(const std::vector<LaidRound>& rounds, const ReliefGrid& grid,
                                             const FabricEnds& ends, const FabricStitches& stitches);

/// How many triangles that topology has.
[[nodiscard]] std::size_t triangles_of_fabric(const std::vector<LaidRound>& rounds, const ReliefGrid& grid,
                                              const FabricEnds& ends);

}  // namespace roundwright
