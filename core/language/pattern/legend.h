#pragma once

#include <optional>

#include "core/language/words/lexer.h"
#include "core/language/words/terms.h"

namespace roundwright {

/// Names that a text gives stitches by itself: "X = sc, V = inc" and then "6X, (X, V) x 6". Its tokens are
/// read as what they are said to mean; as they were written they stay.
void read_by_legend(LexedText& text, std::optional<Terms> terms);

}  // namespace roundwright
