#pragma once

#include <span>
#include <string>
#include <string_view>

#include "core/language/words/lexer.h"
#include "core/language/words/terms.h"

namespace roundwright {

/// Reads a text's words in another language as English ones (US terms). As they were written they stay, and
/// so do their places: a word that English says in two is parted between them. Nothing happens to English.
void read_as_english(LexedText& text, Terms terms);

/// English words (US terms) said in `terms`; what the language has no words for stays. In UK terms, nothing
/// changes.
[[nodiscard]] std::string said_in(std::string_view english, Terms terms);

/// The English of tokens that were read so, spaced as English is; other words as they were written.
[[nodiscard]] std::string english_of(std::span<const Token> tokens);

}  // namespace roundwright
