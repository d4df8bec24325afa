#include "app/kit/length_spin_box.h"

#include <limits>

#include <QSignalBlocker>

#include "core/base/units.h"

namespace roundwright::app {

LengthSpinBox::LengthSpinBox(const Preferences& preferences, double least_mm, double most_mm, QWidget* parent)
    : MeasureSpinBox(parent), least_mm_(least_mm), most_mm_(most_mm), millimetres_(least_mm) {
    show_unit(preferences.units());
    connect(&preferences, &Preferences::units_changed, this, &LengthSpinBox::show_unit);
    connect(this, &QDoubleSpinBox::valueChanged, this, [this](double shown) {
        if (shown == shown_) return;  // Enter tells the value again
        shown_ = shown;
        millimetres_ = unit_ == LengthUnit::inches ? shown * mm_per_inch : shown;
        Q_EMIT edited(millimetres_);
    });
}

void LengthSpinBox::show_millimetres(double mm) {
    if (mm == millimetres_ && value() == shown_) return;  // else what is being typed is wiped out
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
    shown_ = std::numeric_limits<double>::quiet_NaN();  // it was in the other unit
    show_millimetres(mm);
}

}  // namespace roundwright::app
