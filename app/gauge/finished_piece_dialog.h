#pragma once

#include <QDialog>

#include "app/gauge/measurements_form.h"
#include "app/session/document_session.h"
#include "core/shape/calibrate.h"
#include "render/background/background.h"

class QCheckBox;
class QLabel;
class QPushButton;

namespace roundwright::app {

/// The gauge and the stuffing from what is measured on the finished current piece. The answer follows each
/// length typed, and says what these lengths cannot tell. Accepted, it is one undo step.
class FinishedPieceDialog : public QDialog {
    Q_OBJECT
  public:
    explicit FinishedPieceDialog(DocumentSession& session, QWidget* parent = nullptr);

    [[nodiscard]] bool busy() const { return task_.busy(); }
    [[nodiscard]] QString answer() const;
    [[nodiscard]] QString notes() const;

    void accept() override;

  private:
    void make_questions();
    void lay_out();
    [[nodiscard]] KnownBefore known() const;
    void work_out();
    void take(Calibration found, const std::vector<Measured>& measured);
    void show_answer();
    void show_known();

    DocumentSession& session_;
    render::Background task_;
    MeasurementsForm* form_;
    QCheckBox* gauge_counts_;
    QCheckBox* stuffing_is_known_;
    QLabel* answer_;
    QLabel* notes_;
    QPushButton* apply_ = nullptr;
    std::vector<Measured> measured_;  ///< that `found_` explains
    std::optional<Calibration> found_;
};

}  // namespace roundwright::app
