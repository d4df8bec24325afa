#pragma once

#include <array>
#include <vector>

#include "core/shape/calibrate.h"

namespace roundwright {

/// What the found values are worth: which the measurements leave free, which they cannot tell apart, and
/// whether they agree with one another. `sought` says which of the three values were looked for.
[[nodiscard]] std::vector<CalibrationNote> calibration_notes(const Calibration& found,
                                                             const std::vector<Measured>& measured,
                                                             const std::array<bool, 3>& sought);

/// One standard deviation, of the logarithms, that is presumed where nothing is known. The gauge's is a
/// starting value of our own; so is the stretch's, between a quarter, which is what one maker's pieces are
/// taken to differ by (stuffing_error_share), and what makers may differ by in what they call medium.
inline constexpr double presumed_gauge_spread = 0.2;
inline constexpr double presumed_stretch_spread = 0.4;

}  // namespace roundwright
