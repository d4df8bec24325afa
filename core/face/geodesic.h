#pragma once

#include "core/face/smooth_profile.h"

namespace roundwright {

/// Length of the shortest way on the surface of revolution of `profile` from parameter `from` to `to`,
/// turning by `angle` radians about the axis, mm. The way is found among those that always turn onwards; one
/// over a pole is the caller's to compare.
[[nodiscard]] double geodesic_length_mm(const SmoothProfile& profile, double from, double to, double angle);

}  // namespace roundwright
