#pragma once

#include <QString>

#include "app/kit/action_keys.h"

namespace roundwright::app {

/// All keys of an action, as the desktop writes them: "Ctrl+Shift+Z or Ctrl+Y".
[[nodiscard]] QString keys_in_words(const KeyList& keys);

/// Why keys cannot be had, as a sentence.
[[nodiscard]] QString key_fault_words(const QKeySequence& keys, const KeyFault& fault);

}  // namespace roundwright::app
