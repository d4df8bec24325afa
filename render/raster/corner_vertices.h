#pragma once

#include <cstdint>
#include <vector>

#include "core/mesh/stitch_surface.h"

namespace roundwright::render {

/// A mesh's vertices, each as often as it lies on different places of stitches' faces: a graphics card keeps
/// one place a vertex, and where stitches meet they have several.
struct CornerVertices {
    std::vector<std::uint32_t> source;   ///< the mesh's vertex
    std::vector<std::uint32_t> colours;  ///< the mesh's vertex that has its colour
    std::vector<float> places;  ///< 3 a vertex: across the face, up it, and its StitchFace; -1: on no face
    std::vector<std::uint32_t> indices;  ///< 3 a triangle, into the above
};

/// The vertex whose colour a triangle has all over. Between rounds vertices belong to the one below; of a
/// fabric's triangle, the one highest on its stitch is the stitch's own.
[[nodiscard]] inline std::uint32_t colour_vertex(const Mesh& mesh, std::size_t triangle) {
    const std::uint32_t* corner = &mesh.indices[3 * triangle];
    if (mesh.places.empty()) return corner[0];
    const std::uint16_t* place = &mesh.places[6 * triangle];
    const std::size_t highest = place[1] >= place[3] && place[1] >= place[5] ? 0
                                : place[3] >= place[5]                       ? 1
                                                                             : 2;
    return corner[highest];
}

[[nodiscard]] CornerVertices corner_vertices(const Mesh& mesh);

}  // namespace roundwright::render
