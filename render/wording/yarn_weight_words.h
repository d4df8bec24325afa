#pragma once

#include <QString>

#include "core/gauge/yarn_standard.h"

namespace roundwright {

/// "4  Medium (worsted, aran)": number and name of the published table, and what the shops say.
[[nodiscard]] QString yarn_weight_words(const YarnStandard& standard);

}  // namespace roundwright
