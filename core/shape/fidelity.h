#pragma once

namespace roundwright {

/// What a shape was made from, coarsest first.
enum class Fidelity {
    equivalent_round,  ///< a surface of revolution in the place of a piece that is not round as worked: an
                       ///< oval start, rows
    round,             ///< a surface of revolution, one loop a round
    every_stitch,      ///< the place of each stitch
};

/// Whether a shape is one of a meridian turned about an axis, flattened perhaps. Only such a one has an
/// outline (r, z) to reshape, to sculpt or to turn.
[[nodiscard]] constexpr bool is_of_revolution(Fidelity fidelity) {
    return fidelity != Fidelity::every_stitch;
}

}  // namespace roundwright
