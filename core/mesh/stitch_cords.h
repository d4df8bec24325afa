#pragma once

#include <span>

#include "core/stitches/stitch.h"

namespace roundwright {

/// The faces that stitches show. On the right side a single crochet is two plump legs that lean apart from
/// where it is worked in to its two shoulders; the taller stitches stand on a post, with one wrap across it
/// for each time the yarn was laid over; a bobble is a ball; worked into the back loops only, a stitch leaves
/// the front loops below it as a bar. On the wrong side all show the bar across the stitch's back. Of a
/// brushed stitch the pile leaves a low swell to be seen.
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

/// A piece of yarn on a stitch's face: along a line, round in section and at its ends, and lying so high over
/// the fabric. Places run 0..1 across (u) and up (v) the stitch; thicknesses are in stitch widths.
struct Cord {
    double from_u, from_v;
    double to_u, to_v;
    double radius;
    double over = 0;
};

/// The cords of a face, lowest first.
[[nodiscard]] std::span<const Cord> cords_of(StitchFace face);

}  // namespace roundwright
