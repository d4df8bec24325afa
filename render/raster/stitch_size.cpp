#include "render/raster/stitch_size.h"

#include <algorithm>
#include <cstddef>

namespace roundwright::render {

double stitch_size_mm(const StitchSurface& surface) {
    double sum = 0;
    for (const StitchPatch& patch : surface.stitches) {
        for (std::size_t k = 0; k < 4; ++k) sum += (patch.corners[(k + 1) % 4] - patch.corners[k]).norm();
    }
    if (sum > 0) return sum / (4.0 * static_cast<double>(surface.stitches.size()));
    if (surface.mesh.positions.empty()) return 1;
    const auto [low, high] =
        std::minmax_element(surface.mesh.positions.begin(), surface.mesh.positions.end());
    return std::max(1e-3, static_cast<double>(*high - *low) / 20);
}

}  // namespace roundwright::render
