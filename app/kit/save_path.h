#pragma once

#include <QString>

class QWidget;

namespace roundwright::app {

/// Asks where to save; empty: nowhere. A name typed without an ending gets `suffix` before the dialog looks
/// whether the file is there already, so that none is ever replaced unasked.
[[nodiscard]] QString ask_save_path(QWidget* parent, const QString& title, const QString& suggested,
                                    const QString& filter, const QString& suffix);

}  // namespace roundwright::app
