#pragma once

#include <span>

#include "core/assembly/placed_toy.h"

namespace roundwright {

/// The place nearest to a point of the piece's own frame: the gap between two rounds, or an end, and the
/// nearest half stitch of the round below it. `around` stays false.
[[nodiscard]] JoinPlace place_near(const SolvedPiece& piece, const Vec3& point);

/// The place moved by so many rounds (towards the piece's last) and stitches to the viewer's right, kept on
/// the piece. Once all the way round it comes back to where it was. `stitches`: of the piece's rounds.
[[nodiscard]] JoinPlace nudged(JoinPlace place, int rounds, double stitches_right,
                               std::span<const int> stitches);

/// Whether `copy` hangs on `ancestor`, by however many joins, or is it.
[[nodiscard]] bool hangs_on(const PlacedToy& placed, std::size_t copy, std::size_t ancestor);

}  // namespace roundwright
