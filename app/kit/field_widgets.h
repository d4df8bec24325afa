#pragma once

#include <QFont>
#include <QLabel>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QString>

namespace roundwright::app {

/// Words that answer a question: wrapped, selectable with mouse and keyboard, named for a screen reader.
[[nodiscard]] QLabel* words_label(const QString& name = {});

/// A whole number, told when it is complete.
[[nodiscard]] QSpinBox* whole_box(int least, int most);

/// Shows a value and tells nobody. Where the field stands at it already nothing is touched, so that what is
/// being typed is not wiped out.
template <class Box, class Value>
void show_value(Box* box, Value value) {
    const QSignalBlocker quiet(box);
    if (box->value() != value) box->setValue(value);
}

[[nodiscard]] QFont larger_font(QFont font, double factor, QFont::Weight weight = QFont::Normal);

}  // namespace roundwright::app
