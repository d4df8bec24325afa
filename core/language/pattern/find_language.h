#pragma once

#include <optional>
#include <vector>

#include "core/language/pattern/find_terms.h"
#include "core/language/words/lexer.h"

namespace roundwright {

/// The language that a whole text is written in; none when that is English. Every word counts for each
/// language that has it in its terms, the name of a stitch three times; the language with most wins, since
/// many words mean one thing here and another there ("pb", "m", "st").
[[nodiscard]] std::optional<FoundTerms> find_language(const std::vector<SourceLine>& lines);

/// Names in `found` the first stitch of another language in a text that has been read as English.
void find_mixed(const std::vector<SourceLine>& lines, FoundTerms& found);

}  // namespace roundwright
