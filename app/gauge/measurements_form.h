#pragma once

#include <vector>

#include <QWidget>

#include "app/kit/preferences.h"
#include "core/shape/calibrate.h"

class QGridLayout;
class QLabel;
class QSpinBox;

namespace roundwright::app {

class LengthSpinBox;

/// The lengths measured on a finished piece, each with how far it may be out, beside what it would be by the
/// gauge found. A length left at nought is not measured.
class MeasurementsForm : public QWidget {
    Q_OBJECT
  public:
    MeasurementsForm(const Preferences& preferences, int rounds, QWidget* parent = nullptr);

    [[nodiscard]] std::vector<Measured> measured() const;
    /// One a measurement, in the order of `measured()`; empty: none is shown.
    void show_modelled(const std::vector<double>& modelled_mm);

  Q_SIGNALS:
    void edited();

  private:
    struct Row {
        MeasuredOf of;
        LengthSpinBox* length;
        LengthSpinBox* error;
        QLabel* modelled;
    };

    void add_heads();
    void add_row(MeasuredOf of, QWidget* head, const QString& name);
    [[nodiscard]] QWidget* round_head();

    const Preferences& preferences_;
    QGridLayout* grid_;
    QSpinBox* round_;
    std::vector<Row> rows_;
    std::vector<double> shown_mm_;
};

}  // namespace roundwright::app
