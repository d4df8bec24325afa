#pragma once

#include <span>
#include <vector>

#include "core/assembly/placed_toy.h"

namespace roundwright {

/// What several pieces stand like that a body begins on, side by side: their middles on a circle about its
/// axis, equally far from each other, the first to the viewer's right of the front.
struct LegPlace {
    double angle = 0;      ///< from the body's face, to the viewer's right
    double radius_mm = 0;  ///< from its axis
};

/// Places for legs of these edges, `gap_mm` of chains between each two. A pair takes two that mirror each
/// other, of which the first is given; `pairs`: one a leg that is joined, in the order of the joins.
[[nodiscard]] std::vector<LegPlace> leg_places(const std::vector<double>& edge_radius_mm,
                                               const std::vector<bool>& pairs, double gap_mm);

/// The first loop of the body `body` (an index into `placed.pieces`) around the edges of the legs that it
/// begins on and along the chains between them, in the toy's frame: `points_of_seam` points from the middle
/// of its front on. Empty where it begins on fewer than two. An approximation: nothing balances the corner
/// between the legs.
[[nodiscard]] std::vector<Vec3> loop_around_legs(const Toy& toy, const PlacedToy& placed,
                                                 std::span<const SolvedPiece> solved, std::size_t body);

}  // namespace roundwright
