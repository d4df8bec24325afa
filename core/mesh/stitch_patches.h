#pragma once

#include <cstdint>
#include <vector>

#include "core/mesh/fabric_geometry.h"
#include "core/mesh/stitch_surface.h"
#include "core/stitches/stitch_graph.h"
#include "core/stitches/stitch_layout.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Number of each round's first stitch among all of the piece's: rounds + 1 entries.
[[nodiscard]] std::vector<std::uint32_t> first_stitches(const StitchGraph& graph);

/// The corners of every stitch of the graph, in its order. A stitch stands on the loops it is worked into; a
/// stitch without a place of its own (a skipped loop, or one that its round's faults leave none) is a patch
/// of no height on the edge below.
[[nodiscard]] std::vector<StitchPatch> stitch_patches(const Toy& toy, const StitchGraph& graph,
                                                      const std::vector<LaidRound>& rounds,
                                                      const FabricGeometry& geometry);

}  // namespace roundwright
