#pragma once

#include <cstddef>
#include <optional>

#include "core/mesh/stitch_surface.h"
#include "render/scene/camera.h"

namespace roundwright::render {

/// Where a ray first meets a mesh, from either side.
struct MeshHit {
    std::size_t triangle = 0;
    double distance = 0;  ///< mm along the ray
    Vec3 point;           ///< mm
    Vec3 normal;          ///< unit, interpolated, turned towards the ray's origin
};

/// The nearest meeting of the ray with the mesh's triangles.
/// Möller and Trumbore, "Fast, minimum storage ray/triangle intersection", Journal of Graphics Tools 2(1),
/// 1997.
[[nodiscard]] std::optional<MeshHit> pick(const Mesh& mesh, const ViewRay& ray);

}  // namespace roundwright::render
