#pragma once

#include <QString>
#include <QStringList>

#include "core/language/words/terms.h"

namespace roundwright {

/// "US", "German": for a list of terms.
[[nodiscard]] QString terms_name(Terms terms);
/// All of them, in the order of `Terms`.
[[nodiscard]] QStringList terms_names();
/// "US terms", "German terms": within a sentence.
[[nodiscard]] QString terms_in_words(Terms terms);

}  // namespace roundwright
