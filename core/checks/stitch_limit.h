#pragma once

#include <cstdint>

#include "core/toy/toy.h"

namespace roundwright {

/// Stitches of the rounds whose count is stored. Written rounds count when their words are read, where each
/// is limited of itself.
[[nodiscard]] std::int64_t stitches_counted(const Piece& piece);

/// Whether a piece is over the program's limit of stitches (core/base/limits.h); its stitches are then not
/// derived.
[[nodiscard]] bool exceeds_stitch_limit(const Piece& piece);

}  // namespace roundwright
