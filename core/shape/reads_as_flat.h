#pragma once

#include <algorithm>

namespace roundwright {

/// Whether a finished piece is called flat: no taller than fabric is thick (2 mm), or than a tenth of its
/// width.
[[nodiscard]] constexpr bool reads_as_flat(double width_mm, double height_mm) {
    constexpr double fabric_mm = 2, slope = 0.1;
    return height_mm < std::max(fabric_mm, slope * width_mm);
}

}  // namespace roundwright
