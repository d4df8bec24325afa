#pragma once

#include <span>

namespace roundwright {

/// The measures of a surface of revolution through circles of radius r_i at height z_i, joined by frustums.
struct ProfileMeasure {
    double width = 0;    ///< largest diameter
    double height = 0;   ///< between the lowest and the highest circle
    double volume = 0;   ///< signed; positive where z grows. Open ends are closed by flat discs
    double surface = 0;  ///< lateral, without those discs
};

/// Frustum of radii a, b and height h: V = pi h (a^2 + a b + b^2) / 3, lateral surface
/// pi (a + b) sqrt((a - b)^2 + h^2) (CRC Standard Mathematical Tables; Bronshtein and Semendyayev).
/// `radius` and `z` have the same number of entries; none give zeros.
[[nodiscard]] ProfileMeasure measure_profile(std::span<const double> radius, std::span<const double> z);

}  // namespace roundwright
