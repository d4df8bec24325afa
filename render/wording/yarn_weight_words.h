#pragma once

#include <QString>

#include "core/gauge/yarn_standard.h"
#include "core/language/words/terms.h"

namespace roundwright {

/// "4  Medium (worsted, aran)": number and name of the published table, and what the shops say.
[[nodiscard]] QString yarn_weight_words(const YarnStandard& standard);

/// "Worsted (4)", in the UK "Aran (4)": the trade's name, and the number of the published system.
[[nodiscard]] QString yarn_weight_words(YarnWeight weight, Terms terms);

}  // namespace roundwright
