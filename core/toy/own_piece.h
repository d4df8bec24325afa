#pragma once

#include <cstddef>

#include "core/toy/edits.h"

namespace roundwright {

/// A piece by itself, as a toy of its own: with its face, the gauge it was made for and the yarns that its
/// rounds name; nothing of how it is sewn on, or how far it is worked.
[[nodiscard]] Toy toy_of_piece(const Toy& toy, std::size_t piece);

/// Puts pieces of another toy in before piece `at`, with their yarns: of those that the toy has alike the
/// first is used, others come to the end. The words of rounds that change yarn within name yarns by their
/// place, as everywhere, and are not rewritten.
[[nodiscard]] Edited<Toy> insert_pieces_of(const Toy& toy, std::size_t at, const Toy& from);

}  // namespace roundwright
