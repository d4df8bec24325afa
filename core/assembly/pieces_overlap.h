#pragma once

#include <vector>

#include "core/assembly/placed_surface.h"

namespace roundwright {

/// Two pieces that run into each other.
struct PieceOverlap {
    std::size_t one = 0, other = 0;  ///< indices into `PlacedToy::pieces`, the lower first
    double volume_mm3 = 0;           ///< beyond what their join accounts for
};

/// Pieces that run into each other by more than a hundredth of the smaller one, and by more than their join
/// accounts for: the area of the edge, seam or end times the depth that it sinks in, that the surface bulges
/// into it, and their fabrics. What one of the two has no volume of does not count.
[[nodiscard]] std::vector<PieceOverlap> pieces_that_overlap(const AssembledToy& toy);

}  // namespace roundwright
