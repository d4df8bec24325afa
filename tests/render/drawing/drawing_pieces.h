#pragma once

#include <vector>

#include "core/mesh/stitch_surface.h"
#include "core/shape/solve_shape.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright::test {

/// A piece from its counts to its surface, as the program makes it, at 5 mm a stitch.
struct DrawingPiece {
    Toy toy;
    StitchGraph graph;
    Shape shape;
    StitchSurface surface;
};

[[nodiscard]] DrawingPiece drawing_piece(const std::vector<int>& counts, Start start, End end,
                                         double area_stretch, const std::vector<std::size_t>& yarns = {});
[[nodiscard]] DrawingPiece drawing_ball();
[[nodiscard]] DrawingPiece drawing_bowl();

/// A ball of triangles, for a part.
[[nodiscard]] Mesh ball_mesh(const Vec3& centre, double radius_mm, Colour colour);

}  // namespace roundwright::test
