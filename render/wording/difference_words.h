#pragma once

#include <QString>

#include "core/differences/difference.h"

namespace roundwright {

/// In what a toy differs from what it was: "Head: rounds 5 to 9 differ (30 instead of 36)", "Left ear is new
/// (8 rounds)".
[[nodiscard]] QString difference_words(const Difference& difference);

}  // namespace roundwright
