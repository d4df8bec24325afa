#pragma once

#include <QIcon>
#include <QString>

namespace roundwright::app {

/// One of the program's own line drawings ("loop", "lie-flat", ...; resources/icons), in the colour of the
/// palette's text and as sharp as the screen allows.
[[nodiscard]] QIcon icon(const QString& name);

}  // namespace roundwright::app
