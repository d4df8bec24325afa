#pragma once

#include <QColor>

namespace roundwright::render {

/// Relative luminance of an sRGB colour, 0 (black) to 1 (white). Source: WCAG 2.1, definition of relative
/// luminance.
[[nodiscard]] double relative_luminance(const QColor& colour);

/// Contrast ratio of two colours, 1 to 21: (L1 + 0.05) / (L2 + 0.05). Source: WCAG 2.1. Text wants 4.5,
/// large text and graphics 3.
[[nodiscard]] double contrast_ratio(const QColor& a, const QColor& b);

}  // namespace roundwright::render
