#pragma once

#include <QString>

#include "core/language/round/read_diagnostic.h"

namespace roundwright {

/// What stands against written words, as a sentence without its place: "18 stitches are below and these take
/// 14: 4 are left over."
[[nodiscard]] QString diagnostic_sentence(const ReadDiagnostic& diagnostic);

/// A mend as a question: "Say “inc” 6 times in the place of 5?"
[[nodiscard]] QString mend_question(const Mend& mend);

/// A mend that was made: "It now says 6 times instead of 5."
[[nodiscard]] QString mend_made_words(const Mend& mend);

/// A mend as the label of a button: "6 times".
[[nodiscard]] QString mend_label(const Mend& mend);

}  // namespace roundwright
