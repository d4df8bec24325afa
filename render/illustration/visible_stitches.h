#pragma once

#include <cstdint>
#include <vector>

#include "core/mesh/stitch_surface.h"
#include "render/drawing/item_buffer.h"

namespace roundwright::render {

/// Which part of the fabric a triangle shows.
enum class FabricSide : std::uint8_t { outside, inside, rim };

/// The side of every triangle: by how it faces against its stitch.
[[nodiscard]] std::vector<FabricSide> sides_of_triangles(const StitchSurface& surface);

/// A stitch that is seen, from outside or from inside.
struct VisibleStitch {
    std::uint32_t stitch = 0;  ///< index into StitchSurface::stitches
    bool inside = false;
    int layer = 0;  ///< covers what lies in lower layers; stitches of one layer do not cover each other
};

/// The stitches that the item buffer saw anything of, in layers from the farthest on. Triangles of the
/// surface must be numbered from 0.
[[nodiscard]] std::vector<VisibleStitch> visible_stitches(const StitchSurface& surface,
                                                          const ItemBuffer& seen,
                                                          const std::vector<FabricSide>& sides,
                                                          const Projection& projection);

}  // namespace roundwright::render
