#pragma once

#include <memory>
#include <vector>

#include "core/mesh/fabric_surface.h"
#include "core/mesh/stitch_surface.h"
#include "core/shape/lie.h"
#include "core/shape/solve_shape.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright {

/// How finely a revolved piece is drawn.
using RevolveOptions = SurfaceOptions;

/// The surface of revolution of a solved shape, with the relief of its stitches; a flattened piece has its
/// layers to the front and to the back. The axis is y, and the lowest loop lies at y = 0. Round 1 starts at
/// the back, and work goes to the left, as right-handed crochet does. A piece that starts at the top is
/// turned over.
///
/// `ruffle_waves` and `ruffle_height_mm` (crest to trough; may be empty) lay the spare length of each loop in
/// waves: either one entry a loop, rounds + 1 from the start's on, or one a round, for the loop it leaves.
/// Nothing is returned for a shape that does not fit the graph.
[[nodiscard]] StitchSurface revolve(const Toy& toy, const Piece& piece, const StitchGraph& graph,
                                    const Shape& shape, const std::vector<int>& ruffle_waves,
                                    const std::vector<double>& ruffle_height_mm,
                                    const RevolveOptions& options = {});

/// Where that surface lies, without its stitches; nothing for a shape that does not fit the graph. The waves
/// are those of the rounds' `lies`.
[[nodiscard]] std::unique_ptr<FabricGeometry> revolved_fabric(const Piece& piece, const StitchGraph& graph,
                                                              const Shape& shape,
                                                              const std::vector<RoundLie>& lies);

}  // namespace roundwright
