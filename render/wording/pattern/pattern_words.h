#pragma once

#include <QCoreApplication>
#include <QString>

#include "core/gauge/gauge.h"
#include "core/language/words/terms.h"
#include "core/materials/estimate.h"
#include "core/toy/toy.h"
#include "render/wording/length_unit.h"

namespace roundwright::render {

/// A sentence of the printed pattern, in the language of the program: `Pattern::tr("Gauge")`.
struct Pattern {
    Q_DECLARE_TR_FUNCTIONS(Pattern)
};

/// The same where American and British crocheters spell or say it otherwise: the terms of the pattern decide.
[[nodiscard]] QString words(Terms terms, const QString& us, const QString& uk);

/// A finished length in whole mm, or in inches to the nearest eighth: "84 mm", "3 1/4 in".
[[nodiscard]] QString length_words(double mm, LengthUnit units);
/// With its range, where the range shows: "84 mm (80 to 89)".
[[nodiscard]] QString length_words(const Estimate& mm, LengthUnit units);
/// Width by height.
[[nodiscard]] QString size_words(double width_mm, double height_mm, LengthUnit units);

/// Length of yarn: metres or yards, upwards rounded, since running out is worse than a rest.
[[nodiscard]] QString yarn_to_buy_words(double metres, LengthUnit units);
/// The same without its unit.
[[nodiscard]] QString yarn_to_buy_number(double metres, LengthUnit units);
/// Whole grams, below 10 to the half; ounces beside them in inches.
[[nodiscard]] QString weight_words(const Estimate& grams, LengthUnit units);
/// Length of yarn as it is printed, in metres.
[[nodiscard]] double printed_yarn_metres(double metres, LengthUnit units);
/// Grams upwards, to the half below 10 and to whole ones from there on.
[[nodiscard]] double grams_upwards(double grams);

/// "3.5 mm (US E-4, UK 9)".
[[nodiscard]] QString hook_words(double hook_mm);
/// "Worsted (4)", in the UK "Aran (4)": the trade's name, and the number of the published system.
[[nodiscard]] QString yarn_weight_words(YarnWeight weight, Terms terms);
/// "1 h 20 min", rounded to five minutes from an hour on.
[[nodiscard]] QString time_words(double minutes);
[[nodiscard]] QString level_words(Level level);

/// Stitches over 10 cm or 4 inches of a width.
[[nodiscard]] double stitches_in_swatch(double stitch_mm, LengthUnit units);
[[nodiscard]] QString swatch_words(LengthUnit units);

/// A number without false decimals: at most one, none if whole.
[[nodiscard]] QString number_words(double value);

}  // namespace roundwright::render
