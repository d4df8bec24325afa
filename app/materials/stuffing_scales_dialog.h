#pragma once

#include <memory>
#include <optional>

#include <QDialog>

#include "app/session/document_session.h"
#include "core/materials/stuffing.h"

class QComboBox;
class QDoubleSpinBox;
class QLabel;
class QPushButton;

namespace roundwright::app {

/// Asks what the current piece weighs before and after it is stuffed, and keeps what that says of how this
/// maker stuffs. Nothing is filled in before it is weighed. Needs a piece that is stuffed and whose shape is
/// known.
class StuffingScalesDialog : public QDialog {
    Q_OBJECT
  public:
    explicit StuffingScalesDialog(DocumentSession& session, QWidget* parent = nullptr);

    [[nodiscard]] QString answer() const;
    void accept() override;

  private:
    void lay_out();
    [[nodiscard]] std::optional<WeighedPiece> weighed() const;
    void work_out();
    [[nodiscard]] QString answer_words(const WeighedPiece& weighed, const Estimate& grams) const;
    void use_guess();
    void keep(const QString& step, const Making& making);

    DocumentSession& session_;
    std::shared_ptr<const PieceStudy> study_;
    Estimate yarn_g_;
    QDoubleSpinBox* empty_;
    QDoubleSpinBox* stuffed_;
    QComboBox* scales_;
    QLabel* answer_;
    QPushButton* apply_ = nullptr;
    std::optional<Estimate> density_;
};

}  // namespace roundwright::app
