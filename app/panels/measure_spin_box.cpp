#include "app/panels/measure_spin_box.h"

#include <QTimer>

namespace roundwright::app {

MeasureSpinBox::MeasureSpinBox(QWidget* parent) : QDoubleSpinBox(parent) {
    setKeyboardTracking(false);
    setAlignment(Qt::AlignRight);
}

void MeasureSpinBox::focusInEvent(QFocusEvent* event) {
    QDoubleSpinBox::focusInEvent(event);
    if (value() == minimum() && !specialValueText().isEmpty())
        QTimer::singleShot(0, this, &QDoubleSpinBox::selectAll);
}

}  // namespace roundwright::app
