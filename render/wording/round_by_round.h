#pragma once

#include <QStringList>

#include "core/language/words/terms.h"
#include "core/study/piece_study.h"
#include "core/toy/toy.h"
#include "render/wording/length_unit.h"

namespace roundwright {

/// "widest at round 11 (84 mm), narrowing from round 15, neck at round 19 (40 mm)"; empty where there is no
/// shape.
[[nodiscard]] QString profile_words(const PieceStudy& study, LengthUnit units);

/// What picture, chart and plot show, a sentence a round: "Round 11: [sc 5, inc] x 6 (42). 72 mm wide, 40 mm
/// up, cups; growth 0.65, stretch around 4 %." Empty where the study is of other rounds or has no shape.
[[nodiscard]] QStringList round_by_round(const Piece& piece, const PieceStudy& study, Terms terms,
                                         LengthUnit units);

}  // namespace roundwright
