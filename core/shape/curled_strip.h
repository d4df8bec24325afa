#pragma once

#include <optional>

#include "core/gauge/gauge.h"
#include "core/toy/toy.h"

namespace roundwright {

/// A strip that curls by itself, as a tail: a chain, and back along it several stitches in every chain.
struct CurledStrip {
    int chains = 0;
    double stitches_a_chain = 0;  ///< on its outer edge, over those on its inner one
    double inner_mm = 0;          ///< length of its inner edge
    double outer_mm = 0;          ///< and of its outer one
    double height_mm = 0;         ///< from the one to the other
    double inner_radius_mm = 0;
    double outer_radius_mm = 0;
    double turns = 0;
    double length_mm = 0;  ///< along its axis, its turns lying on each other
};

/// The strip of `chains` chains w wide, its rows together h high, with k stitches w wide in every chain on
/// its outer edge, of a fabric `fabric_mm` thick. Nothing where it does not curl (k <= 1).
///
/// Its edges are c w and k c w long and h apart everywhere: a ring's part, of radii r and r + h, has edges in
/// the ratio r / (r + h) = 1 / k, so that r = h / (k - 1), and goes around c w / (2 pi r) times. Round upon
/// round it lies on itself and grows along its axis by its thickness a turn: a corkscrew, whose edges lean
/// so little (thickness / 2 pi r) that their lengths stay what they are in the plane.
[[nodiscard]] std::optional<CurledStrip> curled_strip(int chains, double stitches_a_chain,
                                                      double stitch_width_mm, double height_mm,
                                                      double fabric_mm);

/// That of a piece worked in rows on a chain, with more stitches on its last row than there are chains, by
/// the counts after each row. Nothing where it is none: fewer than two stitches in a chain are a curve, not a
/// coil.
[[nodiscard]] std::optional<CurledStrip> curled_strip(const Piece& piece, const std::vector<int>& stitches,
                                                      const Gauge& gauge, double fabric_mm);

}  // namespace roundwright
