#pragma once

#include <QString>

#include "render/wording/length_unit.h"

namespace roundwright {

/// A length as makers measure it: whole millimetres, or inches to the eighth. "84 mm", "3⅜ in".
[[nodiscard]] QString length_text(double mm, LengthUnit units);

/// How numbers are written: on screen as the maker's system writes them, in a printed pattern, which is read
/// anywhere, with a point and without marks between thousands.
enum class NumberStyle { local, printed };

/// The same without the unit, for a column whose head names it. What is not finite reads as a dash.
[[nodiscard]] QString length_number(double mm, LengthUnit units, NumberStyle style = NumberStyle::local);

/// "80–89", or one number where both ends read alike.
[[nodiscard]] QString length_range_text(double low_mm, double high_mm, LengthUnit units);

/// A small length, as of a stitch: tenths of a millimetre, or hundredths of an inch. "4.8 mm".
[[nodiscard]] QString fine_length_text(double mm, LengthUnit units);

/// "4.8 mm (4.7–4.9)"; the length alone where the error does not show.
[[nodiscard]] QString fine_length_with_range(double mm, double error_mm, LengthUnit units);

[[nodiscard]] QString unit_name(LengthUnit units);

}  // namespace roundwright
