#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/shape/calibrate.h"
#include "core/toy/toy.h"

namespace roundwright {

/// The gauge and stuffing that best explain what was measured on a finished piece, its rounds as worked. The
/// stuffing that the piece says is presumed, within a factor of about 2, where it is not known.
[[nodiscard]] Calibration calibrate_piece(const Piece& piece, const std::vector<Measured>& measured,
                                          KnownBefore known = {}, const ShapeOptions& options = {});

/// The toy with the gauge and the piece's stuffing that were found.
[[nodiscard]] Toy with_calibration(Toy toy, std::size_t piece, const Calibration& found);

/// A finished piece as it was measured on a day ("2026-05-03", or empty).
struct FinishedPiece {
    std::size_t piece = 0;
    std::vector<Measured> measured;
    std::string measured_on;
};

/// The toy with what was found on a finished piece. Where others were measured and count on, it is one of
/// several measurements; where they do not, several of them stay and are left out, and a single one is
/// replaced (`with_calibration`). What was measured on the same piece before makes way, since it says nothing
/// new.
[[nodiscard]] Toy with_finished_piece(Toy toy, const FinishedPiece& finished, const Calibration& found,
                                      bool others_count);

/// What the other measurements of a toy say of the gauge while a finished piece is measured: without what was
/// found on that piece before. Nothing where nothing else was measured.
[[nodiscard]] std::optional<Gauge> gauge_of_others(const Toy& toy, std::size_t piece);

}  // namespace roundwright
