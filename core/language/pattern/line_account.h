#pragma once

#include <vector>

#include "core/language/pattern/reading_state.h"

namespace roundwright {

/// A line with words that no entry of the review has, as one after a limit was met, gets one and is told.
/// `lines` are those of a text with `last_line` lines.
void tell_lines_without_entry(ReadingState& state, const std::vector<PatternLine>& lines, int last_line);

/// A round that the text numbers by its word ("Rnd 3: ...") and that has come to anything else is told.
void tell_rounds_not_taken(ReadingState& state, const std::vector<PatternLine>& lines);

/// What each line of the text came to. Of several entries that it is in, the shortest is its own: a remark in
/// the middle of a round. Time grows with the lines of all entries.
[[nodiscard]] std::vector<LineAccount> account_of(const std::vector<ReadLine>& entries, int last_line);

}  // namespace roundwright
