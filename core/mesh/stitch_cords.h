#pragma once

#include <span>

#include "core/stitches/stitch.h"

namespace roundwright {

/// The faces that stitches show. On the right side a single crochet is a V of two plump legs, a little
/// aslant, that come out close together under the loops of the round below, and over it the front of its own
/// top loops: these overlap like the links of a chain and part the rounds. The taller stitches stand on a
/// post, with one wrap across it for each time the yarn was laid over; a bobble is a ball; worked into the
/// back loops only, a stitch leaves the front loops below it as a bar. On the wrong side all show the bar
/// across the stitch's back, over the backs of the loops below. Of a brushed stitch the pile leaves a low
/// swell to be seen.
enum class StitchFace {
    single,
    single_over_bar,
    half_double,
    double_crochet,
    treble,
    bobble,
    chain,
    slip,
    inside,
    pile
};
inline constexpr std::size_t stitch_faces = 10;

[[nodiscard]] StitchFace face_of(StitchKind kind, LoopPart part);

/// A piece of yarn on a stitch's face: along a line, round in section and at its ends. Places run 0..1 across
/// (u, to the left, as worked) and up (v) the stitch; thicknesses and heights are in stitch widths.
struct Cord {
    double from_u, from_v;
    double to_u, to_v;
    double radius;     ///< at `to`, without the belly
    double over = 0;   ///< how high its middle lies over the fabric
    double dip = 0;    ///< how much lower its ends lie
    double taper = 1;  ///< radius at `from`, as a share of that at `to`

    /// At a share `t` of the way: yarn under tension is fullest half way.
    [[nodiscard]] double radius_at(double t) const;
    [[nodiscard]] double over_at(double t) const { return over - dip * (2 * t - 1) * (2 * t - 1); }
};
inline constexpr double cord_belly = 0.18;

/// The cords of a face, lowest first.
[[nodiscard]] std::span<const Cord> cords_of(StitchFace face);

}  // namespace roundwright
