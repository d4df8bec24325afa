#pragma once

#include <QString>

namespace roundwright::render {

/// The text as it can be printed here: a run of characters that no font of this computer has becomes one
/// replacement character (U+FFFD) in place of empty boxes, which PDF/A does not allow either (ISO 19005-1,
/// 6.3.5). Marks and joiners that only shape their neighbours are left out where no font has them.
[[nodiscard]] QString drawable(const QString& text);

}  // namespace roundwright::render
