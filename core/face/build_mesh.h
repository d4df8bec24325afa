#pragma once

#include <cstdint>

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

/// Adds one mesh to another.
inline void append(Mesh& all, const Mesh& more) {
    const auto first = static_cast<std::uint32_t>(all.vertex_count());
    all.positions.insert(all.positions.end(), more.positions.begin(), more.positions.end());
    all.normals.insert(all.normals.end(), more.normals.begin(), more.normals.end());
    all.colours.insert(all.colours.end(), more.colours.begin(), more.colours.end());
    for (std::uint32_t index : more.indices) all.indices.push_back(first + index);
    all.stitch_of_triangle.insert(all.stitch_of_triangle.end(), more.stitch_of_triangle.begin(),
                                  more.stitch_of_triangle.end());
}

}  // namespace roundwright
