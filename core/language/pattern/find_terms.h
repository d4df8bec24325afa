#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/language/words/lexer.h"
#include "core/language/words/terms.h"

namespace roundwright {

/// Which terms a pattern is in, and how surely.
struct FoundTerms {
    Terms terms = Terms::us;
    bool sure = false;               ///< named in the text, or marked by a stitch that only one has
    bool guessed_from_ring = false;  ///< only "dc" is there: so few in a ring are the UK's
    std::optional<TextSpan> mixed;   ///< a stitch that only the other terms have
    std::string mixed_word;
    std::optional<Terms> mixed_terms;  ///< whose that is, where one of the two is not English
};

/// Names and remarks, which say what they like.
[[nodiscard]] bool is_free_text(std::span<const Token> tokens);
/// "US terms", and little besides: the line that names the terms of the pattern.
[[nodiscard]] bool is_terms_line(std::span<const Token> tokens);

/// Source: Craft Yarn Council, table of US and UK terms: "sc" and "hdc" occur in US terms only, "htr" and
/// "dtr" in UK terms only. Six to eight single crochets begin a flat circle, ten to fourteen (US) doubles do
/// (common practice).
[[nodiscard]] FoundTerms find_terms(const std::vector<SourceLine>& lines);

}  // namespace roundwright
