#pragma once

#include <algorithm>

#include "core/gauge/fabric_thickness.h"

namespace roundwright {

/// Whether a finished piece is called flat: no taller than fabric is thick, or than a tenth of its width.
[[nodiscard]] constexpr bool reads_as_flat(double width_mm, double height_mm) {
    constexpr double slope = 0.1;
    return height_mm < std::max(usual_fabric_mm, slope * width_mm);
}

}  // namespace roundwright
