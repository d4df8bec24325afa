#pragma once

#include "core/assembly/placed_toy.h"
#include "core/study/piece_study.h"

namespace roundwright {

/// A studied piece of a toy as placing reads it.
[[nodiscard]] SolvedPiece solved_piece(const Toy& toy, std::size_t piece, const PieceStudy& study);

}  // namespace roundwright
