#pragma once

#include <QWidget>

#include "app/session/document_session.h"
#include "core/gauge/gauge_source.h"

class QLabel;

namespace roundwright::app {

class LengthSpinBox;

/// The gauge circle, offered while the gauge is not measured: what to work, what it should come to, what it
/// is good for, and one length to type. Told once there is one.
class CircleOffer : public QWidget {
    Q_OBJECT
  public:
    explicit CircleOffer(DocumentSession& session, QWidget* parent = nullptr);

    [[nodiscard]] LengthSpinBox* across() const { return across_; }
    [[nodiscard]] QString expected() const;
    [[nodiscard]] QString help() const;
    /// Takes the expectation from the study of the current piece.
    void show_study();

  Q_SIGNALS:
    void measured(const roundwright::GaugeSource& source);

  private:
    void take(double across_mm);

    DocumentSession& session_;
    LengthSpinBox* across_;
    QLabel* expected_;
    QLabel* help_;
};

}  // namespace roundwright::app
