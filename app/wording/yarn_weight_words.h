#pragma once

#include <QString>

#include "core/gauge/yarn_standard.h"

namespace roundwright::app {

/// "3  Light": number and name of the published table.
[[nodiscard]] QString yarn_weight_words(const YarnStandard& standard);

}  // namespace roundwright::app
