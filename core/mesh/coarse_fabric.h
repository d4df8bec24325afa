#pragma once

#include <memory>
#include <vector>

#include "core/mesh/fabric_geometry.h"
#include "core/stitches/stitch_layout.h"

namespace roundwright {

/// A fabric of larger cells than its stitches.
struct CoarseFabric {
    std::vector<LaidRound> rounds;
    std::unique_ptr<FabricGeometry> geometry;
};

/// The same surface in cells that take so many rounds and, on the whole, so many stitches across; for pieces
/// with more stitches than a picture may have triangles. Every edge kept has three cells at least. A cell
/// wears the stitch in its middle, and its faces go on over it with the stitches' own size
/// (`LaidStitch::face_first`).
[[nodiscard]] CoarseFabric coarse_fabric(const std::vector<LaidRound>& rounds, const FabricGeometry& geometry,
                                         std::size_t rounds_a_cell, double stitches_a_cell);

}  // namespace roundwright
