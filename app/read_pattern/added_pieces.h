#pragma once

#include "core/language/pattern/read_pattern.h"
#include "core/toy/toy.h"

namespace roundwright::app {

[[nodiscard]] bool has_rounds(const Toy& toy);

/// The toy with the pieces that were read behind its own; a toy without rounds becomes the one that was read.
/// Pieces that are worked on the edges of others are joined to those of the text.
[[nodiscard]] Toy with_pieces_read(const Toy& toy, const ReadPattern& pattern);

}  // namespace roundwright::app
