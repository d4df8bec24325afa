#pragma once

#include <optional>

#include "core/language/pattern/read_pattern.h"
#include "core/language/words/lexer.h"

namespace roundwright {

/// A text that is nothing but counts as they are typed (`core/language/round/round_entry.h`): "6, 12, 18" and
/// "24x4, -6" on the next line are the rounds of one piece from a magic ring. Nothing where the text is, or
/// may be, anything else.
[[nodiscard]] std::optional<ReadPattern> read_counts(const LexedText& text, const ReadOptions& options);

}  // namespace roundwright
