#pragma once

#include <cstddef>

#include "core/mesh/stitch_surface.h"

namespace roundwright::test {

/// What a closed mesh must satisfy, measured on its triangles alone.
struct MeshMeasures {
    bool finite = true;
    bool unit_normals = true;
    std::size_t odd_edges = 0;       ///< edges not shared by exactly two triangles in opposite directions
    std::size_t flat_triangles = 0;  ///< of no area
    long euler_characteristic = 0;   ///< vertices in use - edges + triangles
    double volume_mm3 = 0;           ///< divergence theorem: sum of a . (b x c) / 6
    double area_mm2 = 0;
    double total_curvature = 0;  ///< sum over vertices of 2 pi - the angles there (Gauss-Bonnet)
};

[[nodiscard]] MeshMeasures measure(const Mesh& mesh);

}  // namespace roundwright::test
