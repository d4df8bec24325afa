#pragma once

#include <QString>

#include "core/assembly/toy_measures.h"
#include "render/wording/length_unit.h"

namespace roundwright {

/// "120 mm wide (110–130), 180 mm tall (165–196), 95 mm deep (87–104), 40 to 80 g": the toy sewn together.
[[nodiscard]] QString toy_size_words(const ToyMeasures& measures, LengthUnit units);

/// "stands, and would tip over on a slope of 14°" or "tips over by itself; 35 g of pellets in its base would
/// hold it".
[[nodiscard]] QString toy_standing_words(const ToyMeasures& measures, Stance stance);

}  // namespace roundwright
