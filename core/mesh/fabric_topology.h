#pragma once

#include <cstdint>
#include <vector>

#include "core/mesh/fabric_geometry.h"
#include "core/mesh/stitch_cords.h"
#include "core/mesh/stitch_relief.h"
#include "core/stitches/stitch_layout.h"

namespace roundwright {

/// A row of vertices around the piece, in the order worked; one vertex: a pole.
struct VertexRow {
    std::uint32_t first = 0;
    std::uint32_t size = 0;
    std::uint32_t after = 0;  ///< the vertex at which it goes on: its first, if it closes on itself

    /// k is `size` at most.
    [[nodiscard]] std::uint32_t at(std::uint32_t k) const {
        if (size == 1) return first;
        return k < size ? first + k : after;
    }
};

/// Where a round ends and goes on at no vertex of its own row.
struct RowEnd {
    std::uint32_t vertex = 0;
    std::size_t round = 0;
    std::size_t row = 0;  ///< from 1; 0: the edge below the first round
};

/// One skin of a piece's fabric.
struct FabricSkin {
    VertexRow lowest;                          ///< the edge below the first round
    std::vector<std::vector<VertexRow>> rows;  ///< of round i: its rows from just above its lower edge up to
                                               ///< its upper edge
    VertexRow pole_below, pole_above;          ///< of the fans; size 0 without one
    std::vector<RowEnd> row_ends;              ///< they lie after the last cells of their rounds

    [[nodiscard]] const VertexRow& edge(std::size_t i) const { return i == 0 ? lowest : rows[i - 1].back(); }
};

/// Vertices and triangles of a piece's fabric, without their places. A spiral has three rounds at least. Its
/// rounds end on the next one's first vertices; those of the first round, whose edge below closes on itself,
/// on its own as well, and so does the start of the last one where the piece is closed. A piece that is not
/// closed gets an inner skin, joined to the outer one at the rims, so that every edge is always shared by
/// exactly two triangles, which are anticlockwise from outside.
struct SurfaceTopology {
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

[[nodiscard]] SurfaceTopology fabric_topology(const std::vector<LaidRound>& rounds, const ReliefGrid& grid,
                                              const FabricEnds& ends, const FabricStitches& stitches);

/// How many triangles that topology has.
[[nodiscard]] std::size_t triangles_of_fabric(const std::vector<LaidRound>& rounds, const ReliefGrid& grid,
                                              const FabricEnds& ends);

}  // namespace roundwright
