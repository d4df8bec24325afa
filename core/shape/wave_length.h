#pragma once

namespace roundwright {

/// Length of one wave of y = a sin(2 pi x / l) over its wavelength l, for a / l given: with b = 2 pi a / l,
/// (2 / pi) sqrt(1 + b^2) E(b / sqrt(1 + b^2)), E the complete elliptic integral of the second kind by its
/// modulus (DLMF 19.2.8). 1 for a straight line.
[[nodiscard]] double wave_length_ratio(double amplitude_per_wavelength);

/// The inverse: amplitude over wavelength of a sine that is `ratio` times as long as its base; 0 for a ratio
/// of 1 or less. The relative error is below 1e-12.
[[nodiscard]] double wave_amplitude(double ratio);

}  // namespace roundwright
