#pragma once

#include <vector>

#include "core/mesh/stitch_surface.h"
#include "core/pattern/toy.h"
#include "core/shape/solve_shape.h"
#include "core/stitches/stitch_graph.h"

namespace roundwright {

/// How finely the fabric is drawn.
struct RevolveOptions {
    double stitch_width_mm = 5;            ///< scale of the relief
    bool relief = true;                    ///< false: a smooth surface
    std::size_t most_triangles = 200'000;  ///< the relief gets coarser to stay below
};

/// The surface of revolution of a solved shape, with the relief of its stitches, closed where the piece is
/// closed. `ruffle_waves[i]` and `ruffle_height_mm[i]` (may be empty) lay the spare length of loop i in
/// waves.
[[nodiscard]] StitchSurface revolve(const Toy& toy, const Piece& piece, const StitchGraph& graph,
                                    const Shape& shape, const std::vector<int>& ruffle_waves,
                                    const std::vector<double>& ruffle_height_mm,
                                    const RevolveOptions& options = {});

}  // namespace roundwright
