#pragma once

#include "core/mesh/stitch_surface.h"

namespace roundwright::render {

/// The mean surface as a mesh of `steps` by `steps` faces a stitch: straight up the stitch, and along its
/// loops a cubic through the corners of its neighbours (Catmull-Rom) where those stand side by side.
[[nodiscard]] Mesh smooth_patches(const StitchSurface& surface, int steps);

}  // namespace roundwright::render
