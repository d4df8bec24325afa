#pragma once

#include <QString>

#include "app/session/preferences.h"
#include "core/gauge/yarn_standard.h"

namespace roundwright::app {

/// A length in a pattern such as "%1 wide", with the range it may come out in: "84 mm wide (80–89)". The
/// range is left away where it reads as the length itself.
[[nodiscard]] QString measure_words(const QString& pattern, double mm, const Range& range, LengthUnit units);

}  // namespace roundwright::app
