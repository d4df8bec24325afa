#pragma once

#include <span>
#include <vector>

#include "core/checks/check_said_numbers.h"
#include "core/study/piece_study.h"

namespace roundwright {

/// The checks of all the pieces in one list. A check of the whole toy (`piece == -1`), which every study
/// holds, stands in it once, first.
[[nodiscard]] std::vector<Check> checks_of_toy(std::span<const PieceStudy> studies);

/// The same, and after them what the maker's own words say of rounds that are not there
/// (core/checks/check_said_numbers.h). `studies`: of the toy's pieces.
[[nodiscard]] std::vector<Check> every_check(const Toy& toy, std::span<const PieceStudy> studies);

/// Stitches after each round, by piece.
[[nodiscard]] CountsOfPieces counts_of_pieces(std::span<const PieceStudy> studies);

}  // namespace roundwright
