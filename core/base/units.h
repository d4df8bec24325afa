#pragma once

#include <array>

namespace roundwright {

inline constexpr double mm_per_inch = 25.4;  ///< exact: international yard and pound agreement, 1959

/// Unicode's signs for so many eighths, 1 to 7.
inline constexpr std::array<char16_t, 8> signs_of_eighths{u' ',      u'\u215B', u'\u00BC', u'\u215C',
                                                          u'\u00BD', u'\u215D', u'\u00BE', u'\u215E'};

}  // namespace roundwright
