#include "app/panels/length_spin_box.h"

#include <utility>

#include <QFocusEvent>
#include <QLineEdit>
#include <QSignalBlocker>

#include "core/base/units.h"

namespace roundwright::app {

LengthSpinBox::LengthSpinBox(const Preferences& preferences, double least_mm, double most_mm, QWidget* parent)
    : QDoubleSpinBox(parent), least_mm_(least_mm), most_mm_(most_mm), millimetres_(least_mm) {
    setKeyboardTracking(false);
    setAlignment(Qt::AlignRight);
    lineEdit()->installEventFilter(this);
    show_unit(preferences.units());
    connect(&preferences, &Preferences::units_changed, this, &LengthSpinBox::show_unit);
    connect(this, &QDoubleSpinBox::valueChanged, this, [this](double shown) {
        if (shown == shown_) return;  // Enter tells the value again
        shown_ = shown;
        millimetres_ = unit_ == LengthUnit::inches ? shown * mm_per_inch : shown;
        Q_EMIT edited(millimetres_);
    });
}

bool LengthSpinBox::stands_for_nothing() const {
    return value() == minimum() && !specialValueText().isEmpty();
}

// Words that stand in for the least length are no place to type a number into: they are typed over. At once,
// since keys may wait already; after a click once more, which puts the cursor somewhere.
void LengthSpinBox::focusInEvent(QFocusEvent* event) {
    QDoubleSpinBox::focusInEvent(event);
    if (!stands_for_nothing()) return;
    selectAll();
    clicked_into_ = event->reason() == Qt::MouseFocusReason;
}

bool LengthSpinBox::eventFilter(QObject* watched, QEvent* event) {
    const bool click_done = watched == lineEdit() && event->type() == QEvent::MouseButtonRelease;
    if (click_done && std::exchange(clicked_into_, false) && stands_for_nothing()) selectAll();
    return QDoubleSpinBox::eventFilter(watched, event);
}

void LengthSpinBox::show_millimetres(double mm) {
    const QSignalBlocker quiet(this);
    millimetres_ = mm;
    setValue(unit_ == LengthUnit::inches ? mm / mm_per_inch : mm);
    shown_ = value();
}

void LengthSpinBox::show_unit(LengthUnit unit) {
    unit_ = unit;
    const bool inches = unit == LengthUnit::inches;
    const QSignalBlocker quiet(this);
    const double mm = millimetres_;
    setDecimals(inches ? 3 : 1);
    setSingleStep(inches ? 1.0 / 16 : 1.0);
    setSuffix(inches ? tr(" in") : tr(" mm"));
    setRange(inches ? least_mm_ / mm_per_inch : least_mm_, inches ? most_mm_ / mm_per_inch : most_mm_);
    show_millimetres(mm);
}

}  // namespace roundwright::app
