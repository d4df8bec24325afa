#pragma once

#include <QObject>

#include "app/session/document_session.h"

class QAction;
class QMenu;

namespace roundwright::app {

/// The gauge from a gauge circle, and from what is finished.
class GaugeActions : public QObject {
    Q_OBJECT
  public:
    GaugeActions(DocumentSession& session, QWidget* window);

    void fill_shape_menu(QMenu* menu) const;
    [[nodiscard]] QAction* from_finished_piece() const { return from_finished_piece_; }
    [[nodiscard]] QAction* measure_circle() const { return measure_circle_; }

  private:
    void update_state();

    DocumentSession& session_;
    QAction* measure_circle_;
    QAction* from_finished_piece_;
};

}  // namespace roundwright::app
