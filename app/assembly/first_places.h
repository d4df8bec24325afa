#pragma once

#include "core/toy/toy.h"

namespace roundwright::app {

/// A first place for a piece on another that the maker names, to be moved from there: what is made in twos at
/// the sides, anything else in the middle of the face, at half the rounds; by the end and with the seam that
/// the piece would have anywhere (core/assembly/first_joins.h).
[[nodiscard]] Join first_place(const Toy& toy, const PieceCopy& piece, const PieceCopy& onto);

}  // namespace roundwright::app
