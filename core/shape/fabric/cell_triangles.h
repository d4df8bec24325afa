#pragma once

#include <optional>
#include <vector>

#include "core/shape/fabric/fabric_problem.h"

namespace roundwright {

/// A corner of a cell, or a node on one of its lines, in the stitch's own plane, mm.
struct CellCorner {
    std::int32_t node = 0;
    Vec2 rest = Vec2::Zero();
};

/// The outline of a cell as its edges give it: `below` and `above` by their distance from where they begin,
/// in the direction worked.
struct CellOutline {
    std::vector<CellCorner> below;
    std::vector<CellCorner> above;
    double side_before = 0, side_after = 0;                   ///< heights of its sides, mm
    double slant_mm = 0;                                      ///< how far `above` has gone to the right
    std::optional<CellCorner> on_side_before, on_side_after;  ///< y: how far up the side
};

/// Lays the outline out in a plane, its two lines above one another's middle but for the slant, and cuts it
/// into triangles by the shorter diagonal from node to node; of equal ones by `first_diagonal`, so that
/// neighbours can differ. With a slant, where both sides have a height and the cell stays convex, the line
/// above turns about the point where both sides would meet, as a ring of cells in a plane turns about its
/// middle, so that neighbours' sides stay as long as each other. Where a side has no height, as at the end of
/// a partial round, the corners above it lie on those below.
void add_cell_triangles(const CellOutline& outline, bool first_diagonal, std::vector<FabricTriangle>& out);

}  // namespace roundwright
