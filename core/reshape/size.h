#pragma once

#include "core/gauge/gauge.h"

namespace roundwright {

struct Size {
    double width_mm = 0;
    double height_mm = 0;

    friend bool operator==(const Size&, const Size&) = default;
};

/// What a size is allowed to miss: half a round, or 2 %, whichever is more; mm.
[[nodiscard]] double size_tolerance_mm(double wanted_mm, const Gauge& gauge);

/// The largest miss over what is allowed, of the width, of the height, and of the height over the width (what
/// half a round too wide or too high changes it by, or 3 %): within tolerance at 1 or less.
[[nodiscard]] double size_miss(const Size& reached, const Size& wanted, const Gauge& gauge);

/// The larger miss of width and height, in half rounds, whatever the size.
[[nodiscard]] double half_rounds_off(const Size& reached, const Size& wanted, const Gauge& gauge);

}  // namespace roundwright
