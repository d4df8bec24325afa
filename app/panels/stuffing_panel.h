#pragma once

#include <QWidget>

#include "app/session/document_session.h"

class QButtonGroup;
class QLabel;
class QSlider;

namespace roundwright::app {

/// How firmly the current piece is stuffed, and how much fibrefill that takes.
class StuffingPanel : public QWidget {
    Q_OBJECT
  public:
    explicit StuffingPanel(DocumentSession& session, QWidget* parent = nullptr);

  private:
    void set_stretch(double stretch, const QString& step);
    void show_piece();
    void show_amount();

    DocumentSession& session_;
    QButtonGroup* firmness_;
    QSlider* stretch_;
    QLabel* stretch_text_;
    QLabel* amount_;
};

}  // namespace roundwright::app
