#include "app/export/export_actions.h"

#include "app/export/mesh_dialog.h"
#include "app/export/picture_dialog.h"
#include "app/kit/action_maker.h"

namespace roundwright::app {

ExportActions::ExportActions(DocumentSession& session, QWidget* window)
    : QObject(window),
      session_(session),
      window_(window),
      picture_(make_action(window, "file.picture")),
      mesh_(make_action(window, "file.mesh")) {
    connect(picture_, &QAction::triggered, this, &ExportActions::save_picture);
    connect(mesh_, &QAction::triggered, this, &ExportActions::save_mesh);
    connect(&session_, &DocumentSession::toy_changed, this, &ExportActions::follow_piece);
    connect(&session_, &DocumentSession::current_piece_changed, this, &ExportActions::follow_piece);
    follow_piece();
}

void ExportActions::fill(QMenu* menu) const { menu->addActions({picture_, mesh_}); }

void ExportActions::follow_piece() {
    const bool there = session_.piece() != nullptr && !session_.piece()->rounds.empty();
    picture_->setEnabled(there);
    mesh_->setEnabled(there);
}

void ExportActions::save_picture() { PictureDialog(session_, scene_, window_).exec(); }

void ExportActions::save_mesh() { MeshDialog(session_, window_).exec(); }

}  // namespace roundwright::app
