#pragma once

#include <vector>

#include "core/assembly/pieces_overlap.h"

namespace roundwright {

/// Where two pieces run into each other, in the toy's frame, mm.
struct OverlapRegion {
    std::size_t one = 0, other = 0;  ///< indices into `PlacedToy::pieces`
    Mesh inside;                     ///< what of the surface of either lies within the other
    /// Where one surface goes through the other: each line from point to point, closed ones with their first
    /// point at the end once more.
    std::vector<std::vector<Vec3>> lines;
};

/// The region of an overlap: as much as `overlap.volume_mm3` says. Of two that are joined, what is farthest
/// from their seam: what is nearer than that the seam needs.
[[nodiscard]] OverlapRegion overlap_region(const AssembledToy& toy, const PieceOverlap& overlap);

/// The same of two solids; `from` (may be null): only the part that is farthest from there, of this volume.
[[nodiscard]] OverlapRegion overlap_region(const Solid& one, const Solid& other, const Vec3* from = nullptr,
                                           double volume_mm3 = 0);

/// So many points along a line, `spacing_mm` or somewhat less from each other.
[[nodiscard]] std::vector<Vec3> spaced_along(const std::vector<Vec3>& line, double spacing_mm);

}  // namespace roundwright
