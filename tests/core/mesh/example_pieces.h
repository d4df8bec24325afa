#pragma once

#include <random>
#include <vector>

#include "core/shape/solve_shape.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright::test {

/// A piece with everything a surface is made from, the graph evenly spaced here and the shape chosen
/// outright, so that the mesh is tested apart from the solver.
struct ExamplePiece {
    Toy toy;
    StitchGraph graph;
    Shape shape;

    [[nodiscard]] const Piece& piece() const { return toy.pieces.front(); }
};

/// Rounds of these counts, increases and decreases evenly spaced; `foundation` 0: a magic ring.
[[nodiscard]] StitchGraph even_graph(const std::vector<int>& counts, int foundation = 0);

/// A shape through these loops; volume by frustums, flat fan if `closed`.
[[nodiscard]] Shape shape_through(const std::vector<double>& radius_mm, const std::vector<double>& z_mm);

/// A piece of `counts` on a rough shape of its own: radius as the counts ask at 5 mm a stitch, rising where
/// they do not grow as a flat disc does.
[[nodiscard]] ExamplePiece example_piece(const std::vector<int>& counts, End end, int foundation = 0);

/// A ball of n rounds up, n even, n down, on an exact sphere.
[[nodiscard]] ExamplePiece sphere_piece(int n);

/// Counts of a random piece that can be worked: growth between half and double.
[[nodiscard]] std::vector<int> random_counts(std::mt19937& random, int most_rounds);

}  // namespace roundwright::test
