#pragma once

#include <span>
#include <vector>

#include "core/base/vec.h"
#include "core/shape/fabric/stitch_cells.h"

namespace roundwright {

/// Turns and moves nodes so that the piece stands as it is shown: the middle of its last edge straight above
/// that of its first one (or, of a flat piece, its inside up), that line the axis y, its lowest node at y =
/// 0, and the start of its rounds at the back. A chain that it is worked around lies from side to side,
/// worked along its back first; a sheet faces the front.
void stand_upright(const StitchCells& cells, std::vector<Vec3>& nodes);

/// The same by a shape that stands already: turns and moves nodes onto it as nearly as they fit (W. Kabsch,
/// Acta Cryst. A32 (1976) 922-923), and sets the lowest at y = 0.
void stand_upright_as(std::span<const Vec3> standing, std::vector<Vec3>& nodes);

}  // namespace roundwright
