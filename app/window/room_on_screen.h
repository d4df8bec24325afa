#pragma once

#include <QSize>

class QWidget;

namespace roundwright::app {

/// A size that a window may open at on the screen of `widget`: as wanted, or as large as there is room for
/// beside the frame and title that the desktop adds.
[[nodiscard]] QSize room_on_screen(const QWidget& widget, QSize wanted);

}  // namespace roundwright::app
