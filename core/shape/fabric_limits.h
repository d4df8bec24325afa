#pragma once

namespace roundwright {

/// Stretch around a round above which stuffing shows between the stitches: a starting value of our own (no
/// published figure was found); a tighter hook moves it.
inline constexpr double gaps_above_stretch = 0.15;

/// Growth below which a round gathers (design value: closing in faster than a flat disc does).
inline constexpr double gathers_below_growth = -1;

}  // namespace roundwright
