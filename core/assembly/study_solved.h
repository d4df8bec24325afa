#pragma once

#include "core/assembly/placed_toy.h"
#include "core/study/piece_study.h"

namespace roundwright {

/// A studied piece of a toy as placing reads it. `before` (may be null): the same of an earlier study, which
/// is given again where nothing of it has changed.
[[nodiscard]] SolvedPiece solved_piece(const Toy& toy, std::size_t piece, const PieceStudy& study,
                                       const SolvedPiece* before = nullptr);

}  // namespace roundwright
