#pragma once

#include <QString>

#include "core/toy/toy.h"

namespace roundwright {

/// The piece's name as it stands in a sentence, or "piece 3" where it has none.
[[nodiscard]] QString piece_name(const Toy& toy, std::size_t piece);

/// The same letter by letter as the maker typed it: for machines, and to be compared.
[[nodiscard]] QString own_piece_name(const Toy& toy, std::size_t piece);
/// What the maker calls the toy, as it is, for files and for `printable_name`; may be empty.
[[nodiscard]] QString own_toy_name(const Toy& toy);

}  // namespace roundwright
