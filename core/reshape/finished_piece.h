#pragma once

#include <cstddef>

#include "core/shape/calibrate.h"
#include "core/toy/toy.h"

namespace roundwright {

/// The gauge and stuffing that best explain what was measured on a finished piece, its rounds as worked. The
/// stuffing that the piece says is presumed, within a factor of about 2, where it is not known.
[[nodiscard]] Calibration calibrate_piece(const Piece& piece, const std::vector<Measured>& measured,
                                          KnownBefore known = {}, const ShapeOptions& options = {});

/// The toy with the gauge and the piece's stuffing that were found.
[[nodiscard]] Toy with_calibration(Toy toy, std::size_t piece, const Calibration& found);

}  // namespace roundwright
