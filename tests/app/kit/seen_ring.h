#pragma once

#include <QImage>
#include <QWidget>

namespace roundwright::app {

/// Pixels of `area` that differ by 3 : 1 at least between the two pictures (WCAG 2.2, 2.4.13).
[[nodiscard]] int clearly_changed(const QImage& without, const QImage& with, const QRect& area);

/// The area of a perimeter 2 px thick (2.4.13).
[[nodiscard]] int perimeter_area(const QSize& size);

/// What of a control the keyboard acts on, in its own coordinates.
[[nodiscard]] QRect acted_on(const QWidget& control);

}  // namespace roundwright::app
