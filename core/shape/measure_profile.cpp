#include "core/shape/measure_profile.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright {

ProfileMeasure measure_profile(std::span<const double> radius, std::span<const double> z) {
    ProfileMeasure measure;
    if (radius.empty()) return measure;
    measure.width = 2 * *std::max_element(radius.begin(), radius.end());
    const auto [lowest, highest] = std::minmax_element(z.begin(), z.end());
    measure.height = *highest - *lowest;
    for (std::size_t i = 1; i < radius.size(); ++i) {
        const double a = radius[i - 1];
        const double b = radius[i];
        const double h = z[i] - z[i - 1];
        measure.volume += std::numbers::pi / 3 * h * (a * a + a * b + b * b);
        measure.surface += std::numbers::pi * (a + b) * std::hypot(a - b, h);
    }
    return measure;
}

}  // namespace roundwright
