#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/base/colour.h"
#include "core/base/vec.h"
#include "core/stitches/stitch.h"

namespace roundwright {

/// A triangle mesh as plain vectors of numbers: x right, y up, z towards the viewer (the toy's front), mm.
/// Triangles are anticlockwise seen from outside.
struct Mesh {
    std::vector<float> positions;                  ///< 3 a vertex
    std::vector<float> normals;                    ///< 3 a vertex, unit length
    std::vector<float> colours;                    ///< 3 a vertex, sRGB 0..1
    std::vector<std::uint32_t> indices;            ///< 3 a triangle
    std::vector<std::int32_t> stitch_of_triangle;  ///< index into StitchSurface::stitches; -1 for none
    std::vector<std::uint16_t> places;  ///< 6 a triangle: where its corners lie on the stitch's face, across
                                        ///< and up, in `place_units`; none on a mesh that is no fabric
    std::vector<std::uint8_t> faces;    ///< the StitchFace of each triangle; none likewise

    static constexpr double place_units = 256;  ///< of a stitch

    [[nodiscard]] std::size_t vertex_count() const { return positions.size() / 3; }
    [[nodiscard]] std::size_t triangle_count() const { return indices.size() / 3; }
};

/// One stitch on the finished surface. Corners: lower left, lower right, upper right, upper left as seen from
/// outside with the start of the piece below.
struct StitchPatch {
    int round = 0;   ///< from 0
    int stitch = 0;  ///< within its round, from 0
    std::array<Vec3, 4> corners;
    Vec3 normal;
    Colour colour;
    StitchKind kind = StitchKind::single_crochet;
    LoopPart part = LoopPart::both;
    bool brushed = false;  ///< its yarn's pile is brushed up and hides the stitch
};

/// What shows, measures, picks, draws or exports a piece works on this, whichever solver made it.
struct StitchSurface {
    std::vector<StitchPatch> stitches;
    std::vector<std::uint32_t> first_stitch_of_round;  ///< rounds + 1 entries
    std::optional<Vec3>
        first_pole;  ///< where the first edge is drawn to a point, and its stitches do not reach it
    std::optional<Vec3> last_pole;  ///< the same of the last edge
    Mesh mesh;
};

}  // namespace roundwright
