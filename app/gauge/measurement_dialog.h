#pragma once

#include <optional>

#include <QDialog>

#include "app/session/document_session.h"

class QLineEdit;
class QPushButton;

namespace roundwright::app {

/// One measurement of several: a gauge circle or a swatch with its figures, and the name that the maker gives
/// it. Of what cannot be typed again (a finished piece), the name alone.
class MeasurementDialog : public QDialog {
    Q_OBJECT
  public:
    MeasurementDialog(DocumentSession& session, GaugeMeasurement measurement, QWidget* parent = nullptr);

    [[nodiscard]] const GaugeMeasurement& measurement() const { return measurement_; }
    void accept() override;

  private:
    [[nodiscard]] QWidget* page();
    void take(const GaugeSource& source);
    void update_state();

    DocumentSession& session_;
    GaugeMeasurement measurement_;
    QLineEdit* name_;
    QPushButton* use_ = nullptr;
};

}  // namespace roundwright::app
