#pragma once

#include <stop_token>

#include "core/study/piece_study.h"

namespace roundwright {

/// `study_piece` in two steps, for whoever shows the shape before its checks are there.

/// All but the checks. `warm` (may be null): the study of the piece before an edit.
[[nodiscard]] PieceStudy study_shape(const Toy& toy, std::size_t piece, const PieceStudy* warm,
                                     std::stop_token stop);

/// The study with its checks, and those of their cures that are sound.
[[nodiscard]] PieceStudy with_checks(PieceStudy study, const Toy& toy, std::size_t piece,
                                     const std::stop_token& stop);

}  // namespace roundwright
