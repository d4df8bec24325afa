#include "core/shape/wave_length.h"

#include <cmath>
#include <numbers>

namespace roundwright {

using std::numbers::pi;

double wave_length_ratio(double amplitude_per_wavelength) {
    const double b = 2 * pi * amplitude_per_wavelength;
    const double root = std::sqrt(1 + b * b);
    return 2 / pi * root * std::comp_ellint_2(std::abs(b) / root);
}

// With b = 2 pi a / l the ratio is convex in b, 1 + b^2 / 4 at most, and
// d ratio / d b = 2 / (pi b) (sqrt(1 + b^2) E - K / sqrt(1 + b^2)); so Newton from 2 sqrt(ratio - 1), which
// is below the root, passes it once and then comes down to it.
double wave_amplitude(double ratio) {
    if (!(ratio > 1) || !std::isfinite(ratio)) return 0;
    double b = 2 * std::sqrt(ratio - 1);
    for (int step = 0; step < 60; ++step) {
        const double root = std::sqrt(1 + b * b);
        const double full = root * std::comp_ellint_2(b / root);
        const double slope = (full - std::comp_ellint_1(b / root) / root) / b;
        const double change = (full - ratio * pi / 2) / slope;
        if (!std::isfinite(change)) break;
        b -= change;
        if (std::abs(change) <= 1e-14 * b) break;
    }
    return b / (2 * pi);
}

}  // namespace roundwright
