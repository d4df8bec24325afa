#pragma once

#include <cstddef>

#include "core/toy/toy.h"

namespace roundwright {

/// The toy with a piece made anew in its place: another size, form or yarn, or begun at its other end. Joins
/// onto it keep their relative height and their angle about its axis, as features do (carry_over.h); those on
/// rounds that both begin with stay where they are, and so do those at either end. Where the new piece begins
/// at its other end, the piece's own joins take the other end too.
[[nodiscard]] Toy with_piece_remade(const Toy& toy, std::size_t piece, Piece made);

}  // namespace roundwright
