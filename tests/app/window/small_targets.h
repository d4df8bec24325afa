#pragma once

#include <QStringList>
#include <QWidget>

namespace roundwright::app {

/// What is to be pressed in a window, as far as it is shown and enabled, and is smaller than 24 x 24 px
/// without as much room around it (WCAG 2.2, 2.5.8): one line each. Left out are the arrows of number fields,
/// whose field does the same, and the dividers between parts of a window.
[[nodiscard]] QStringList small_targets(const QWidget& window);

}  // namespace roundwright::app
