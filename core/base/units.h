#pragma once

namespace roundwright {

inline constexpr double mm_per_inch = 25.4;  ///< exact: international yard and pound agreement, 1959

}  // namespace roundwright
