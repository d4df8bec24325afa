#pragma once

#include <cstdint>

namespace roundwright {

/// The stitches of the trade (US names; `instructions/terms.h` gives the UK ones).
enum class StitchKind : std::uint8_t {
    chain,
    slip_stitch,
    single_crochet,
    half_double_crochet,
    double_crochet,
    treble_crochet,
    bobble,
    skip,  ///< a loop of the round below left unworked: takes a loop, leaves none
};

/// Which part of the loop below a stitch is worked into.
enum class LoopPart : std::uint8_t { both, front, back };

/// One stitch: what is made, and how many loops of the round below it takes.
///
/// An increase is two (or more) stitches of which all but the first share the first one's foot. A decrease is
/// one stitch with two (or more) feet. A chain has no foot. Every kind but `skip` leaves one loop on top.
struct Stitch {
    StitchKind kind = StitchKind::single_crochet;
    LoopPart part = LoopPart::both;
    std::uint16_t feet = 1;  ///< loops below that the stitch is worked into; 0 for a chain
    bool same_foot = false;  ///< worked into the loop the stitch before it was worked into
    bool invisible = false;  ///< a decrease worked through the front loops only
    std::uint16_t yarn = 0;  ///< index into the toy's yarns

    friend bool operator==(const Stitch&, const Stitch&) = default;
};

/// Loops a stitch takes that no stitch before it has taken.
[[nodiscard]] constexpr int loops_taken(const Stitch& stitch) {
    return stitch.same_foot ? stitch.feet - 1 : stitch.feet;
}

/// Loops a stitch leaves for the round above.
[[nodiscard]] constexpr int loops_left(const Stitch& stitch) {
    return stitch.kind == StitchKind::skip ? 0 : 1;
}

}  // namespace roundwright
