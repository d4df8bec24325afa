#pragma once

#include "core/mesh/stitch_surface.h"

namespace roundwright::render {

/// Typical side of a stitch, mm: the mean over the patches' edges; without stitches, a twentieth of the
/// mesh's extent.
[[nodiscard]] double stitch_size_mm(const StitchSurface& surface);

}  // namespace roundwright::render
