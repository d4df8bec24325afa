#pragma once

#include <QWidget>

#include "app/materials/materials_now.h"
#include "app/session/document_session.h"

class QComboBox;
class QDoubleSpinBox;
class QLabel;
class QSpinBox;

namespace roundwright::app {

/// What a piece, a toy or a batch of toys takes: yarn by length, weight and balls, stuffing and time, each
/// with its range; and what of it the maker can measure or wants to have to spare.
class TakesPanel : public QWidget {
    Q_OBJECT
  public:
    explicit TakesPanel(DocumentSession& session, QWidget* parent = nullptr);

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    void build();
    void connect_all();
    void change_making(const QString& step, std::optional<double> Making::*part, double value,
                       const QString& merge_key);
    void show_all();
    void show_amounts();
    [[nodiscard]] TakenFor what() const;
    [[nodiscard]] QString amounts_words(const Materials& one) const;

    DocumentSession& session_;
    QComboBox* what_;
    QSpinBox* times_;
    QLabel* amounts_;
    QDoubleSpinBox* spare_;
    QDoubleSpinBox* undone_;
    QLabel* undone_words_;
};

}  // namespace roundwright::app
