#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/language/words/lexer.h"

namespace roundwright {

/// A piece that is worked like another one: "Right ear: same as left ear", "Work as for the arms to Rnd 8".
struct Likeness {
    std::span<const Token> heading;  ///< what stands before; empty: a heading before it names the piece
    std::string other;               ///< as it is written
    int last_round = 0;              ///< of the other piece, from 1; 0: all of its rounds
    TextSpan where;
};

/// None when the line says anything besides.
[[nodiscard]] std::optional<Likeness> likeness_of(std::span<const Token> tokens);

/// "As above.", "Same as the first one.": the piece before it is meant.
[[nodiscard]] bool says_as_above(std::span<const Token> tokens);

/// "As for the head", "same as head": the words after it, which may name a piece; empty: none may.
[[nodiscard]] std::string piece_meant(std::span<const Token> tokens);

/// The words of a piece's name to find it by: capitals, "the" and plurals apart.
using NameWords = std::vector<std::string>;
[[nodiscard]] NameWords name_words(std::string_view name);

/// Whether "same as", "work as for" or the like stands in a line, and the name of a piece after it.
[[nodiscard]] bool mentions_likeness(std::span<const Token> tokens, std::span<const NameWords> pieces);

/// The piece meant: the one of that name, or else the only one in whose name all the words stand. -1: there
/// is none, or there are several.
[[nodiscard]] int piece_called(std::string_view name, std::span<const NameWords> pieces);

}  // namespace roundwright
