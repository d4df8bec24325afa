#pragma once

#include <QString>

#include "core/study/piece_study.h"
#include "render/wording/length_unit.h"

namespace roundwright {

/// "84 mm wide (80–89), 76 mm tall (73–80)": the size and the range that the gauge leaves it; "flat" where it
/// is no taller than that, with the waves of its edge. Where the piece is not round as worked, "as a round
/// piece" says so.
[[nodiscard]] QString size_words(const PieceStudy& study, LengthUnit units);

/// What is drawn and measured in the place of a piece that is not round as worked, and the oval's own length
/// and width where they are known. Empty for a round one.
[[nodiscard]] QString equivalent_round_words(const PieceStudy& study, LengthUnit units);

/// "fabric about 2.4 mm thick, 58 mm wide inside"; of a closed piece that is not stuffed, which may be meant
/// to cover something, "fits over a ball of up to 66 mm" as well. Empty where there is no shape.
[[nodiscard]] QString fabric_words(const PieceStudy& study, LengthUnit units);

/// The shape for someone who cannot see it: how its height compares with its width, where it is widest, how
/// it ends, how its edge waves.
[[nodiscard]] QString shape_words(const PieceStudy& study, LengthUnit units);

}  // namespace roundwright
