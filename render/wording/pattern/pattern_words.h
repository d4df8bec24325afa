#pragma once

#include <QCoreApplication>
#include <QString>

#include "core/language/words/terms.h"
#include "core/materials/estimate.h"
#include "core/toy/toy.h"
#include "render/wording/amounts.h"
#include "render/wording/by_terms.h"
#include "render/wording/length_unit.h"
#include "render/wording/yarn_weight_words.h"

namespace roundwright::render {

/// A sentence of the printed pattern, in the language of the program: `Pattern::tr("Gauge")`.
struct Pattern {
    Q_DECLARE_TR_FUNCTIONS(Pattern)
};

/// A finished length in whole mm, or in inches to the nearest eighth: "84 mm", "3 1/4 in".
[[nodiscard]] QString length_words(double mm, LengthUnit units);
/// With its range, where the range shows: "84 mm (80 to 89)".
[[nodiscard]] QString length_words(const Estimate& mm, LengthUnit units);
/// Width by height.
[[nodiscard]] QString size_words(double width_mm, double height_mm, LengthUnit units);

[[nodiscard]] QString level_words(Level level);

}  // namespace roundwright::render
