#pragma once

#include <vector>

#include "core/language/words/lexer.h"

namespace roundwright {

/// Rounds that stand side by side in two columns, as a page's text comes when it is copied: the lines of the
/// right column are put behind those of the left one. They keep their numbers and places in the text.
void part_columns(std::vector<SourceLine>& lines);

}  // namespace roundwright
