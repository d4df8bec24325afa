#pragma once

#include <QString>

#include "core/study/fabric_stage.h"

namespace roundwright {

/// Why a piece is not worked out stitch by stitch, as the end of a sentence.
[[nodiscard]] QString not_every_stitch_words(EveryStitchRefusal why, CellsRefusal cells);

}  // namespace roundwright
