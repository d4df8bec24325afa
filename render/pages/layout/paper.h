#pragma once

#include <QPageSize>
#include <QSizeF>

#include "core/base/units.h"

namespace roundwright::render {

enum class Paper { a4, letter };

/// Pages are laid out in units of 1/1440 inch, a twentieth of a point: fine enough that whole-number font
/// sizes and line positions round away nothing one can see, on paper and on screen alike.
inline constexpr int units_per_inch = 1440;
inline constexpr double units_per_point = units_per_inch / 72.0;
inline constexpr double units_per_mm = units_per_inch / mm_per_inch;

/// Millimetres and points as layout units.
[[nodiscard]] constexpr double mm(double value) { return value * units_per_mm; }
[[nodiscard]] constexpr double pt(double value) { return value * units_per_point; }

/// Size of an upright page, mm. A4: ISO 216; Letter: 8.5 by 11 inches.
[[nodiscard]] inline QSizeF paper_size_mm(Paper paper) {
    return paper == Paper::a4 ? QSizeF(210, 297) : QSizeF(215.9, 279.4);
}

}  // namespace roundwright::render
