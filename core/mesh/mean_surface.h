#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/mesh/fabric_geometry.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright {

/// The mean surface of a fabric, without relief or stitches, by the lines of its loops.
struct MeanSurface {
    /// [edge][k]: as many points on every edge, each a like share of the way around from one line up the
    /// fabric, without twist (`FabricGeometry::loops_at`).
    std::vector<std::vector<FabricPoint>> loops;
    std::optional<FabricPoint> pole_below;
    std::optional<FabricPoint> pole_above;
    bool starts_in_a_point = false;  ///< the first edge is one point
    bool in_layers = false;          ///< it lies flat, and its folds have corners
};

/// With `around` points on every edge: a multiple of four, so that of what lies flat the folds are met.
[[nodiscard]] MeanSurface mean_surface(const FabricGeometry& geometry, std::size_t around);

/// That surface as a mesh of one skin, open where the fabric is: through all loops, and between them along
/// curves that overshoot neither (Fritsch and Carlson), `steps` faces up a round; level at its poles. In
/// layers, along quadratic B-splines with the loops as their control points, since a curve through every loop
/// would swing around the corners of a fold.
[[nodiscard]] Mesh smooth_mesh(const MeanSurface& surface, std::size_t steps);

}  // namespace roundwright
