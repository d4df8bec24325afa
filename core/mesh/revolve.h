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

/// The surface of revolution of a solved shape, with the relief of its stitches; a flattened piece has its
/// layers to the front and to the back. The axis is y, and the lowest loop lies at y = 0. Round 1 starts at
/// the back, and work goes to the left, as right-handed crochet does. A piece that starts at the top is
/// turned over.
///
/// A closed piece is one watertight skin around its solved volume. An open one has an inside too, joined to
/// the outside at the rims, so that its mesh is watertight around the fabric itself.
///
/// `ruffle_waves` and `ruffle_height_mm` (crest to trough; may be empty) lay the spare length of each loop in
/// waves: either one entry a loop, rounds + 1 from the start's on, or one a round, for the loop it leaves.
/// Nothing is returned for a shape that does not fit the graph.
[[nodiscard]] StitchSurface revolve(const Toy& toy, const Piece& piece, const StitchGraph& graph,
                                    const Shape& shape, const std::vector<int>& ruffle_waves,
                                    const std::vector<double>& ruffle_height_mm,
                                    const RevolveOptions& options = {});

}  // namespace roundwright
