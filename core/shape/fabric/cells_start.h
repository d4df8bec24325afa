#pragma once

#include <span>
#include <vector>

#include "core/base/vec.h"
#include "core/shape/fabric/stitch_cells.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

/// Nodes on the round solve's shape of the same piece, y up, the start of round 1 at the back. A loop's
/// corners stand so far out that they are as long together as its circle is around; the nodes of a spiral
/// climb along the meridian. Of a flattened piece the circles are taken.
[[nodiscard]] std::vector<Vec3> revolved_start(const StitchCells& cells, const Shape& round);

/// Nodes by landmark multidimensional scaling of the geodesic distances in the relaxed fabric, whatever its
/// topology (V. de Silva and J. B. Tenenbaum, Sparse multidimensional scaling using landmark points, Stanford
/// 2004), as large as its fabric and with its outside out. Up is where `stand_upright` puts it.
[[nodiscard]] std::vector<Vec3> scaled_start(const StitchCells& cells);

/// Nodes from those of a similar piece, edge by edge and at the same share of the way around, stretched over
/// the difference where the numbers of rounds differ.
[[nodiscard]] std::vector<Vec3> carried_start(const StitchCells& cells, const StitchCells& before,
                                              std::span<const Vec3> nodes);

/// Nodes moved out of the surface in waves: edge e by `amplitude_mm[e]` times the cosine of so many waves
/// around the piece.
[[nodiscard]] std::vector<Vec3> waved(const StitchCells& cells, std::span<const Vec3> nodes, int waves,
                                      std::span<const double> amplitude_mm);

/// The volume within nodes, mm3, open edges closed by fans to their centres (the divergence theorem);
/// negative if the outside is in.
[[nodiscard]] double enclosed_mm3(const StitchCells& cells, std::span<const Vec3> nodes);

}  // namespace roundwright
