#pragma once

#include <QRect>
#include <QSize>

class QWidget;

namespace roundwright::app {

/// The size that is wanted with usual type, larger as the type is, or what the widget's screen has room for,
/// with a window's frame around it.
[[nodiscard]] QSize room_on_screen(const QWidget& widget, QSize wanted);

/// The rectangle of a window's inside, made as small and moved as far as it takes for its frame and title to
/// be on the screen too.
[[nodiscard]] QRect placed_on_screen(const QRect& inside, const QRect& available);

/// The same for a window: on the screen where most of it is, or the first one if it is on none. Of a window
/// that fills the screen it is the size that it goes back to.
void keep_on_screen(QWidget& window);

}  // namespace roundwright::app
