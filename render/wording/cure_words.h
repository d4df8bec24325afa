#pragma once

#include <QString>

#include "core/checks/check.h"

namespace roundwright {

/// A cure as a question: "Spread the increases over 5 rounds?"
[[nodiscard]] QString cure_question(const Cure& cure);

/// A cure as the label of a button: "Spread over 5 rounds".
[[nodiscard]] QString cure_label(const Cure& cure);

/// The edit that a cure makes, for the list of undo steps: "Spread increases".
[[nodiscard]] QString cure_step(const Cure& cure);

}  // namespace roundwright
