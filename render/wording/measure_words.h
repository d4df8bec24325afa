#pragma once

#include <QString>

#include "core/gauge/yarn_standard.h"
#include "render/wording/length_unit.h"

namespace roundwright {

/// "84 mm wide (80–89)": a width and the range it may come out in, which is left away where it reads as the
/// width.
[[nodiscard]] QString width_words(double mm, const Range& range, LengthUnit units);

/// "67 mm deep (64–70)": from front to back.
[[nodiscard]] QString depth_words(double mm, const Range& range, LengthUnit units);

/// "76 mm tall (73–80)", or "flat" where it is no taller than that.
[[nodiscard]] QString height_words(double mm, const Range& range, LengthUnit units);

/// For a label that wraps: no line ends within a size or its range.
[[nodiscard]] QString sizes_kept_whole(QString words);

}  // namespace roundwright
