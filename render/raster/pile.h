#pragma once

#include "core/mesh/stitch_surface.h"

namespace roundwright::render {

/// The fibres that stand off brushed stitches, as slender triangles from the fabric to their tips; a mesh
/// without triangles where nothing is brushed. The same for the same surface every time. `lit_rounds` of it
/// are told by `stitch_of_triangle`, as of the surface's own mesh.
[[nodiscard]] Mesh pile_mesh(const StitchSurface& surface);

}  // namespace roundwright::render
