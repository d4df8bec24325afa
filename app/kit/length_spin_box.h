#pragma once

#include "app/kit/measure_spin_box.h"
#include "app/kit/preferences.h"

namespace roundwright::app {

/// A measured length, held in mm and shown in the unit the maker prefers. A tape is read to the millimetre or
/// to a sixteenth of an inch; finer values given are kept.
class LengthSpinBox : public MeasureSpinBox {
    Q_OBJECT
  public:
    LengthSpinBox(const Preferences& preferences, double least_mm, double most_mm, QWidget* parent = nullptr);

    [[nodiscard]] double millimetres() const { return millimetres_; }
    /// Shows a length without telling anyone that it changed.
    void show_millimetres(double mm);

  Q_SIGNALS:
    /// The maker typed or stepped to another length.
    void edited(double mm);

  private:
    void show_unit(LengthUnit unit);

    LengthUnit unit_ = LengthUnit::millimetres;
    double least_mm_;
    double most_mm_;
    double shown_ = 0;  ///< in the unit shown
    double millimetres_ = 0;
};

}  // namespace roundwright::app
