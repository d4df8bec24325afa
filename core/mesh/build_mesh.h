#pragma once

#include <cstdint>
#include <vector>

#include "core/base/colour.h"
#include "core/base/vec.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright {

inline void add_vertex(Mesh& mesh, const Vec3& position, const Vec3& normal, const Colour& colour) {
    for (int k = 0; k < 3; ++k) {
        mesh.positions.push_back(static_cast<float>(position[k]));
        mesh.normals.push_back(static_cast<float>(normal[k]));
    }
    for (int channel : {colour.red, colour.green, colour.blue}) {
        mesh.colours.push_back(static_cast<float>(channel) / 255.0F);
    }
}

inline void add_triangle(Mesh& mesh, std::uint32_t a, std::uint32_t b, std::uint32_t c) {
    mesh.indices.insert(mesh.indices.end(), {a, b, c});
    mesh.stitch_of_triangle.push_back(-1);
}

template <class Value>
void append(std::vector<Value>& to, const std::vector<Value>& more) {
    to.insert(to.end(), more.begin(), more.end());
}

/// Adds one mesh to another, whose stitches come after so many.
inline void append(Mesh& to, const Mesh& more, std::int32_t stitches_before = 0) {
    const auto vertices = static_cast<std::uint32_t>(to.vertex_count());
    append(to.positions, more.positions);
    append(to.normals, more.normals);
    append(to.colours, more.colours);
    for (const std::uint32_t index : more.indices) to.indices.push_back(vertices + index);
    for (const std::int32_t stitch : more.stitch_of_triangle)
        to.stitch_of_triangle.push_back(stitch < 0 ? stitch : stitch + stitches_before);
    append(to.places, more.places);
    append(to.faces, more.faces);
}

}  // namespace roundwright
