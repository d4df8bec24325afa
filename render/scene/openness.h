#pragma once

#include <vector>

#include "core/mesh/stitch_surface.h"

namespace roundwright::render {

/// How open to the light each vertex lies, 1 on ridges and flats down to about 0.3 in the hollows between
/// stitches. From the mean normal curvature over the edges at the vertex, n.(q - p) / |q - p|^2, times
/// `scale_mm`, the size of the hollows that should show; then smoothed once over the neighbours.
[[nodiscard]] std::vector<float> openness(const Mesh& mesh, double scale_mm);

/// Typical side of a stitch, mm: the mean over the patches' edges; without stitches, a twentieth of the
/// mesh's extent.
[[nodiscard]] double stitch_size_mm(const StitchSurface& surface);

}  // namespace roundwright::render
