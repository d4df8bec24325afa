#pragma once

class QWidget;

namespace roundwright::app {

/// The first widget within that Tab goes to and that can be had now; null if there is none.
[[nodiscard]] QWidget* first_stop(QWidget* within);

}  // namespace roundwright::app
