#pragma once

#include <QWidget>

#include "app/session/document_session.h"

class QButtonGroup;
class QLabel;
class QPushButton;
class QSlider;

namespace roundwright::app {

/// How firmly the current piece is stuffed, how much fibrefill that takes, and how long the piece takes to
/// work.
class StuffingPanel : public QWidget {
    Q_OBJECT
  public:
    explicit StuffingPanel(DocumentSession& session, QWidget* parent = nullptr);

  private:
    void set_stretch(double stretch, const QString& step);
    void show_piece();
    void show_amount();
    /// Of the rounds that are stuffed, as far as they have a shape.
    [[nodiscard]] double stuffed_mm3(const PieceStudy& study) const;

    DocumentSession& session_;
    QButtonGroup* firmness_;
    QSlider* stretch_;
    QLabel* stretch_text_;
    QLabel* amount_;
    QPushButton* weigh_;
};

}  // namespace roundwright::app
