#pragma once

#include <QString>

#include "core/gauge/gauge.h"
#include "core/materials/estimate.h"
#include "core/pattern/toy.h"
#include "render/pages/paper.h"

namespace roundwright::render {

/// A sentence of the printed pattern, in the language of the program.
[[nodiscard]] QString words(const char* text);

/// "1 round", "4 rounds".
[[nodiscard]] QString counted(int count, const char* one, const char* many);

/// A finished length in whole mm, or in inches to the nearest eighth: "84 mm", "3 1/4 in".
[[nodiscard]] QString length_words(double mm, Units units);
/// With its range, where the range shows: "84 mm (80 to 89)".
[[nodiscard]] QString length_words(const Estimate& mm, Units units);
/// Width by height.
[[nodiscard]] QString size_words(double width_mm, double height_mm, Units units);

/// Length of yarn: metres or yards, upwards rounded, since running out is worse than a rest.
[[nodiscard]] QString yarn_length_words(double metres, Units units);
/// Whole grams, below 10 to the half; ounces beside them in inches.
[[nodiscard]] QString weight_words(const Estimate& grams, Units units);

/// "3.5 mm (US E-4, UK 9)".
[[nodiscard]] QString hook_words(double hook_mm);
/// "Light (3)".
[[nodiscard]] QString yarn_weight_words(YarnWeight weight);
/// "1 h 20 min", rounded to five minutes from an hour on.
[[nodiscard]] QString time_words(double minutes);
[[nodiscard]] QString level_words(Level level);

/// Stitches over 10 cm or 4 inches of a width.
[[nodiscard]] double stitches_in_swatch(double stitch_mm, Units units);
[[nodiscard]] QString swatch_words(Units units);

/// A number without false decimals: at most one, none if whole.
[[nodiscard]] QString number_words(double value);

}  // namespace roundwright::render
