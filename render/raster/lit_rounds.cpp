#include "render/raster/lit_rounds.h"

#include <algorithm>
#include <cstdint>

namespace roundwright::render {

std::vector<float> lit_vertices(const StitchSurface& surface, const Mesh& mesh,
                                const std::vector<int>& rounds) {
    std::vector<float> lit(mesh.vertex_count(), 0);
    if (rounds.empty()) return lit;
    std::vector<int> sorted = rounds;
    std::sort(sorted.begin(), sorted.end());
    for (std::size_t t = 0; t < mesh.stitch_of_triangle.size() && t < mesh.triangle_count(); ++t) {
        const std::int32_t stitch = mesh.stitch_of_triangle[t];
        if (stitch < 0 || static_cast<std::size_t>(stitch) >= surface.stitches.size()) continue;
        const int round = surface.stitches[static_cast<std::size_t>(stitch)].round;
        if (!std::binary_search(sorted.begin(), sorted.end(), round)) continue;
        for (std::size_t k = 0; k < 3; ++k) lit[mesh.indices[3 * t + k]] = 1;
    }
    return lit;
}

}  // namespace roundwright::render
