#pragma once

#include <cstddef>
#include <functional>
#include <vector>

#include "core/toy/edits.h"

namespace roundwright {

/// Edits of the joins of a toy, and edits of its pieces that take the joins along, as functions from one toy
/// to the next. Joins and pieces count from 0; numbers that are not there are passed over.

/// Puts a join at the end of the list. Refused beyond `max_joins`.
[[nodiscard]] Edited<Toy> add_join(const Toy& toy, const Join& join);
/// Puts another join in the place of one; what a file keeps in it stays.
[[nodiscard]] Toy change_join(const Toy& toy, std::size_t join, Join becomes);
[[nodiscard]] Toy remove_join(const Toy& toy, std::size_t join);

/// Makes a piece so many times, at least once. Joins of copies that there are no more go, of either side, and
/// a pair of which one is left becomes a single one.
[[nodiscard]] Toy set_made(const Toy& toy, std::size_t piece, int make);

/// An edit of one piece's rounds. Joins onto it stay in their gaps as its features do; what is joined to its
/// last edge stays at the last edge.
using RoundsEdit = std::function<Edited<Piece>(const Piece&)>;
[[nodiscard]] Edited<Toy> edit_rounds(const Toy& toy, std::size_t piece, const RoundsEdit& edit);

/// Pieces with a copy that is joined onto this one, each once, in the order of the joins.
[[nodiscard]] std::vector<std::size_t> pieces_joined_onto(const Toy& toy, std::size_t piece);

}  // namespace roundwright
