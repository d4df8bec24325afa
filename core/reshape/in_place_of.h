#pragma once

#include "core/reshape/frog_back.h"
#include "core/reshape/piece_form.h"

namespace roundwright {

/// A piece made anew in the place of another: it keeps the other's name, how many of it the toy needs, its
/// stuffing, its face at the same relative height and the same angles, and what may stay of the progress.
[[nodiscard]] Piece in_place_of(const PieceForm& old, const PieceForm& made, const FrogBack& back);

}  // namespace roundwright
