#pragma once

#include <vector>

#include "core/face/face_surface.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright {

/// Points of the surface from one place to another, at equal steps along the meridian and around.
[[nodiscard]] std::vector<SurfacePoint> way_between(const SurfacePlace& from, const SurfacePlace& to,
                                                    const FaceSurface& surface);

/// A thread as a closed tube with tapered ends along points that lie on the surface, a little proud of it.
[[nodiscard]] Mesh thread_mesh(const std::vector<SurfacePoint>& way, double thickness_mm,
                               const Colour& colour);

}  // namespace roundwright
