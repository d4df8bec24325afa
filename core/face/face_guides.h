#pragma once

#include "core/face/face_surface.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright {

/// Lines to judge a face by, laid on its front: the middle, the level of half the height, and the thirds.
[[nodiscard]] Mesh face_guides(const FaceSurface& surface, const Colour& colour);

}  // namespace roundwright
