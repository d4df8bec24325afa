#pragma once

#include "core/stitches/stitch.h"

namespace roundwright {

/// Size and yarn of a stitch, measured in single crochets: multiply by the gauge's stitch width, round height
/// or yarn of one single crochet.
///
/// Heights are common practice of the trade: a double crochet turns twice as high as a single, a half double
/// stands between them, a treble three times as high; a slip stitch and a chain lie on the edge and raise it
/// hardly or not at all. A bobble stands out of the fabric rather than up, and takes the place of one single
/// crochet.
[[nodiscard]] double height_in_sc(StitchKind kind);

/// Width of the loop a stitch leaves on top: one single crochet for every kind that leaves one, 0 for `skip`.
[[nodiscard]] double width_in_sc(StitchKind kind);

/// Yarn of a stitch worked into one loop. A half double takes 1.5 times the yarn of a single crochet
/// (published measurement); the others are estimates of our own from the loops drawn up and the overs made.
[[nodiscard]] double yarn_in_sc(StitchKind kind);

/// Yarn of a stitch with its feet: every foot more draws up one loop more.
[[nodiscard]] double yarn_in_sc(const Stitch& stitch);

}  // namespace roundwright
