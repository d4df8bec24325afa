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

// A wave is at least 4 a long (up, down twice and up again), which bounds the bisection.
double wave_amplitude(double ratio) {
    if (!(ratio > 1) || !std::isfinite(ratio)) return 0;
    double low = 0;
    double high = ratio / 4;
    while (high - low > 1e-13 * high) {
        const double middle = low + (high - low) / 2;
        if (middle <= low || middle >= high) break;
        (wave_length_ratio(middle) < ratio ? low : high) = middle;
    }
    return low + (high - low) / 2;
}

}  // namespace roundwright
