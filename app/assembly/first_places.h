#pragma once

#include "core/toy/toy.h"

namespace roundwright::app {

/// A first place for a piece on another, to be moved from there: what is made in twos at the sides, anything
/// else in the middle of the face, at half the rounds; by its open edge where it has one.
[[nodiscard]] Join first_place(const Toy& toy, const PieceCopy& piece, const PieceCopy& onto);

/// The toy with every piece sewn on of which nothing is said: the largest stands, the largest single one that
/// is left goes on top of it, and the others on these two, no two in one gap; what is made in twos, in
/// mirrored pairs.
[[nodiscard]] Toy with_first_places(Toy toy);

/// The toy with a piece that came last sewn to what is there. A first piece stands by itself.
[[nodiscard]] Toy with_first_place_of(Toy toy, PieceId piece);

}  // namespace roundwright::app
