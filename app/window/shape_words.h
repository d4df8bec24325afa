#pragma once

#include <QString>

#include "app/session/preferences.h"
#include "core/checks/piece_study.h"

namespace roundwright::app {

/// "84 mm wide (80–89), 76 mm tall (73–80)": the size and the range that the gauge leaves it.
[[nodiscard]] QString size_words(const PieceStudy& study, LengthUnit units);

/// The shape for someone who cannot see it: how its height compares with its width, where it is widest, how
/// it ends.
[[nodiscard]] QString shape_words(const PieceStudy& study);

}  // namespace roundwright::app
