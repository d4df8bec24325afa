#pragma once

#include <vector>

#include <QString>

#include "core/shape/lie.h"

namespace roundwright {

/// "round 5", "rounds 3 to 6", "rounds 3 and 7", "4 rounds"; the rounds are counted from 0 and ascending.
[[nodiscard]] QString rounds_phrase(const std::vector<int>& rounds);

/// "+6", "−6", "=".
[[nodiscard]] QString change_phrase(int change);

/// How the fabric lies, in a word or two.
[[nodiscard]] QString lie_phrase(Lie lie);

}  // namespace roundwright
