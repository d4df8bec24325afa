#pragma once

class QScrollArea;
class QWidget;

namespace roundwright::app {

/// Where a window's contents are larger than its screen, as with large type, all but the last row (its
/// buttons) scroll. Windows whose contents are no column of rows, and whatever fits, stay as they are.
void scroll_to_fit(QWidget& window);

/// A column of fields that scrolls up and down where the window is lower than it, as wide as the fields need
/// with their scroll bar.
[[nodiscard]] QScrollArea* scrolled_column(QWidget* fields);

}  // namespace roundwright::app
