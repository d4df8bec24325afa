#pragma once

#include "core/toy/toy.h"
#include "tests/core/recorded/numbers.h"

namespace roundwright::test {

/// A workable piece with bands of yarn, marks, notes and a pair of eyes; the same numbers give the same
/// piece.
[[nodiscard]] Piece made_up_piece(Numbers& numbers);

/// Something to fit to a piece of so many rounds, wherever it may come to sit.
[[nodiscard]] Feature made_up_feature(Numbers& numbers, int rounds);

}  // namespace roundwright::test
