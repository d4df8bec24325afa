#pragma once

#include <QString>

#include "core/base/units.h"
#include "core/materials/estimate.h"
#include "render/wording/length_unit.h"

namespace roundwright {

inline constexpr double mm_per_yard = 36 * mm_per_inch;

// Yarn by its length. On screen as it is, to the tenth below ten; in a pattern upwards, since running out is
// worse than a rest.

/// "5.6 m", or yards where lengths are in inches.
[[nodiscard]] QString yarn_length_words(double mm, LengthUnit units);
/// What to buy: "6 m", whole and upwards.
[[nodiscard]] QString yarn_to_buy_words(double metres, LengthUnit units);
/// The same without its unit.
[[nodiscard]] QString yarn_to_buy_number(double metres, LengthUnit units);
/// Length of yarn as it is printed, in metres.
[[nodiscard]] double printed_yarn_metres(double metres, LengthUnit units);

// Weights. On screen in grams, as the kitchen scales show them; in a pattern with a range, and ounces for
// makers in inches.

/// "3.5 g", whole from ten on.
[[nodiscard]] QString grams_text(double grams);
/// "2 to 3 g": whole grams, below 10 to the half; ounces before them in inches.
[[nodiscard]] QString weight_words(const Estimate& grams, LengthUnit units);
/// Grams upwards, to the half below 10 and to whole ones from there on.
[[nodiscard]] double grams_upwards(double grams);

/// "US E-4, UK 9": what the hook is called where hooks have letters or numbers; empty where this one has
/// none.
[[nodiscard]] QString hook_names(double hook_mm);
/// "3.5 mm (US E-4, UK 9)".
[[nodiscard]] QString hook_with_names(double hook_mm);

/// "1 h 20 min", rounded to five minutes from an hour on.
[[nodiscard]] QString time_words(double minutes);

/// Stitches over 10 cm or 4 inches of a width.
[[nodiscard]] double stitches_in_swatch(double stitch_mm, LengthUnit units);
/// "10 cm", "4 in".
[[nodiscard]] QString swatch_words(LengthUnit units);

/// A number without false decimals: at most one, none if whole.
[[nodiscard]] QString number_words(double value);

}  // namespace roundwright
