#pragma once

#include <QObject>

#include "app/session/document_session.h"

class QAction;
class QMenu;

namespace roundwright::render {
class SceneView;
}

namespace roundwright::app {

/// What the File menu saves besides the toy: a picture of a piece, and its shape as a 3D file.
class ExportActions : public QObject {
    Q_OBJECT
  public:
    ExportActions(DocumentSession& session, QWidget* window);

    void fill(QMenu* menu) const;
    /// The view whose picture can be saved just as it stands.
    void show_from(const render::SceneView* scene) { scene_ = scene; }

  private:
    void save_picture();
    void save_mesh();
    void follow_piece();

    DocumentSession& session_;
    QWidget* window_;
    const render::SceneView* scene_ = nullptr;
    QAction* picture_;
    QAction* mesh_;
};

}  // namespace roundwright::app
