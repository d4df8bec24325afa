#pragma once

#include <QString>

#include "core/checks/check.h"
#include "render/wording/length_unit.h"

namespace roundwright {

/// A check in words: the round, what is wrong in stitches and in mm or inches, and what would cure it. "Round
/// 6 ruffles: 12 more stitches where about 6 lie flat. Its edge has 31 mm to spare and waves 4 mm high.
/// Spread the increases over 2 rounds?" Rounds count from 1. The piece is not named.
[[nodiscard]] QString check_sentence(const Check& check, LengthUnit units);

/// "To fix", "Worth a look", "Good to know".
[[nodiscard]] QString severity_words(Severity severity);

}  // namespace roundwright
