#pragma once

#include <QFont>
#include <QLabel>
#include <QSpinBox>
#include <QString>

namespace roundwright::app {

/// Words that answer a question: wrapped, selectable with mouse and keyboard, named for a screen reader.
[[nodiscard]] QLabel* words_label(const QString& name = {});

/// A whole number, told when it is complete.
[[nodiscard]] QSpinBox* whole_box(int least, int most);

[[nodiscard]] QFont larger_font(QFont font, double factor, QFont::Weight weight = QFont::Normal);

}  // namespace roundwright::app
