#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/language/words/lexer.h"

namespace roundwright {

/// "Fold flat and sc through both layers": the row closes the piece, and no round follows on it.
[[nodiscard]] bool closes_flat(std::span<const Token> tokens);

/// Loops that an earlier round left ("in the free front loops of R2"), which a piece begins on.
struct LeftLoops {
    int round = 0;             ///< from 1, of the piece on the hook or the last one
    std::vector<Token> words;  ///< what is worked in them
};
[[nodiscard]] std::optional<LeftLoops> left_loops(std::span<const Token> tokens);

}  // namespace roundwright
