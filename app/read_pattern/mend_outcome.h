#pragma once

#include <QString>

#include "core/language/pattern/read_pattern.h"

namespace roundwright::app {

/// What a mend has made come out, as a sentence or two: "Round 4 comes out now, with 18 stitches." Mends
/// leave the lines of a text where they are, so rounds before and after it are the same where they are on one
/// line. `finding`: what was mended, as it was read before.
[[nodiscard]] QString mend_outcome_words(const ReadPattern& before, const ReadPattern& after,
                                         const ReadDiagnostic& finding);

}  // namespace roundwright::app
