#pragma once

#include <QObject>

#include "app/session/document_session.h"

class QAction;
class QMenu;

namespace roundwright::render {
class SceneView;
}

namespace roundwright::app {

/// The Shape menu: where the shape is seen from, and whether it is stuffed.
struct ShapeActions : public QObject {
    Q_OBJECT
  public:
    ShapeActions(DocumentSession& session, QWidget* window);

    void fill(QMenu* menu) const;
    /// The view that the actions turn; before there is one they do nothing.
    void drive(render::SceneView* scene) { scene_ = scene; }

    QAction* front;
    QAction* side;
    QAction* top;
    QAction* back;
    QAction* bottom;
    QAction* three_quarter;
    QAction* fit;
    QAction* zoom_in;
    QAction* zoom_out;
    QAction* turn_left;
    QAction* turn_right;
    QAction* turn_up;
    QAction* turn_down;
    QAction* stuffed;
    QAction* every_stitch;

  private:
    void show_stuffed();

    DocumentSession& session_;
    render::SceneView* scene_ = nullptr;
};

}  // namespace roundwright::app
