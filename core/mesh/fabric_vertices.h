#pragma once

#include <vector>

#include "core/mesh/fabric_geometry.h"
#include "core/mesh/fabric_topology.h"
#include "core/mesh/stitch_relief.h"
#include "core/mesh/stitch_surface.h"
#include "core/stitches/stitch_graph.h"
#include "core/stitches/stitch_layout.h"
#include "core/toy/toy.h"

namespace roundwright {

/// What a fabric is made of, apart from where it lies.
struct SurfaceMaterial {
    const Toy& toy;
    const StitchGraph& graph;
    const FabricStitches& stitches;
    const std::vector<LaidRound>& rounds;
    double stitch_width_mm = 5;  ///< scale of the relief
};

/// Positions and colours for the vertices of a topology, and, if `shaded`, the normals of the mean surface;
/// the relief's own are then left to whoever draws it.
void place_fabric(const SurfaceTopology& topology, const SurfaceMaterial& material,
                  const FabricGeometry& geometry, const Reliefs& reliefs, bool shaded, Mesh& mesh);

}  // namespace roundwright
