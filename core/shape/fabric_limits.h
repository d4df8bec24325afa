#pragma once

#include "core/gauge/flat_limits.h"

namespace roundwright {

/// A loop ruffles where it is longer by this share than its circle, and than the widest circle that the
/// rounds below could reach lying flat.
inline constexpr double ruffles_above_share = pushed_flat_share;

/// A growing round of what is stuffed or flattened lies flat up to this rise over its own length as a cone:
/// 8 half doubles a round, which by common practice lie flat, rise 0.53; 5 singles, which cup, 0.60. It is
/// the rise of a round that has to be pulled wider by `pulled_flat_share` to lie flat.
inline constexpr double flat_up_to_rise = 0.56;

/// Stretch around a round above which stuffing shows between the stitches: a starting value of our own (no
/// published figure was found); a tighter hook moves it.
inline constexpr double gaps_above_stretch = 0.15;

/// Growth below which a round gathers: common practice closes smoothly with as many decreases a round as the
/// start had stitches, up to 8 (-1.27 at w = h); a flat disc closes with -1.
inline constexpr double gathers_below_growth = -1.3;

/// Degrees by which the fabric may turn more at one round than at the rounds beside it before an edge shows:
/// a starting value of our own. Stuffed balls stay below 10, a flat base with straight sides below 20, the
/// foot of a nose or the shelf where the stitches double in one round goes above 30.
inline constexpr double edge_above_turn_degrees = 25;

/// Change of the growth ratio from one round to the next above which the count alone makes an edge: a
/// starting value of our own. From six increases to even is 0.95 and stays smooth; from six increases
/// straight to six decreases is 1.91.
inline constexpr double edge_above_growth_change = 1.5;

/// Stretch around a narrow place above which stuffing has visibly widened it: a starting value of our own,
/// twice what a medium stuffed ball has at its equator.
inline constexpr double neck_widens_above_stretch = 0.05;

}  // namespace roundwright
