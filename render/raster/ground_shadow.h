#pragma once

#include <vector>

#include <QImage>

#include "core/mesh/stitch_surface.h"
#include "render/raster/camera.h"

namespace roundwright::render {

/// The soft shadow under what stands on a table at its lowest point, lit from above and a little from the
/// left of the picture: black, its strength in the alpha channel. The whole falls wide and faint, what is
/// near the table narrow and darker. As large as the camera's viewport.
[[nodiscard]] QImage ground_shadow(const std::vector<const Mesh*>& meshes, const Camera& camera);

/// Points of the table that it reaches at most, three floats each, as they lie for the camera's direction.
[[nodiscard]] std::vector<float> reach_of_shadow(const std::vector<const Mesh*>& meshes,
                                                 const Camera& camera);

}  // namespace roundwright::render
