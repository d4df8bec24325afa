#include "app/kit/measure_spin_box.h"

#include <utility>

#include <QFocusEvent>
#include <QLineEdit>

namespace roundwright::app {

MeasureSpinBox::MeasureSpinBox(QWidget* parent) : QDoubleSpinBox(parent) {
    setKeyboardTracking(false);
    setAlignment(Qt::AlignRight);
    lineEdit()->installEventFilter(this);
}

bool MeasureSpinBox::shows_words() const {
    return !specialValueText().isEmpty() && text() == specialValueText();
}

// At once, since keys may wait already; after a click once more, which puts the cursor somewhere.
void MeasureSpinBox::focusInEvent(QFocusEvent* event) {
    QDoubleSpinBox::focusInEvent(event);
    if (!shows_words()) return;
    selectAll();
    clicked_into_ = event->reason() == Qt::MouseFocusReason;
}

bool MeasureSpinBox::eventFilter(QObject* watched, QEvent* event) {
    const bool click_done = watched == lineEdit() && event->type() == QEvent::MouseButtonRelease;
    if (click_done && std::exchange(clicked_into_, false) && shows_words()) selectAll();
    return QDoubleSpinBox::eventFilter(watched, event);
}

}  // namespace roundwright::app
