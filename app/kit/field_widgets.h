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

/// "2.9 g", "35 g": tenths below ten.
[[nodiscard]] QString grams_text(double grams);

[[nodiscard]] QFont larger_font(QFont font, double factor, QFont::Weight weight = QFont::Normal);

}  // namespace roundwright::app
