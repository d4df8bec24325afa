#pragma once

#include <QString>

namespace roundwright::app {

/// What is heard of a cell of a table: "Round 28, stitches, 12", and where nothing stands in it,
/// "Round 28, stitches, empty".
[[nodiscard]] QString cell_words(const QString& row, const QString& column, const QString& text);

}  // namespace roundwright::app
