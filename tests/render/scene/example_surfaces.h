#pragma once

#include <vector>

#include "core/mesh/stitch_surface.h"

namespace roundwright::test {

/// The stitch surface of a ball of n rounds up, n even, n down, on an exact sphere, with its relief or
/// smooth.
[[nodiscard]] StitchSurface ball_surface(int n, bool relief = true, std::size_t most_triangles = 20'000);

/// The same in alternating colours, round by round.
[[nodiscard]] StitchSurface striped_ball_surface(int n, const std::vector<Colour>& colours,
                                                 std::size_t most_triangles = 20'000);

/// A ball of brushed yarn.
[[nodiscard]] StitchSurface brushed_ball_surface(int n, Colour colour);

/// An open tube of so many rounds of so many stitches.
[[nodiscard]] StitchSurface tube_surface(int stitches, int rounds);

/// A sphere of triangles between circles of latitude, without stitches.
[[nodiscard]] Mesh sphere_mesh(const Vec3& centre, double radius_mm, int slices, Colour colour);

}  // namespace roundwright::test
