#pragma once

#include <QObject>

#include "app/session/document_session.h"

class QAction;
class QMenu;

namespace roundwright::app {

/// Reshaping in the menus: another size, new from a form, turned over, joined.
class ReshapeActions : public QObject {
    Q_OBJECT
  public:
    ReshapeActions(DocumentSession& session, QWidget* window);

    void fill_shape_menu(QMenu* menu) const;
    void fill_piece_menu(QMenu* menu) const;
    [[nodiscard]] QAction* reshape() const { return reshape_; }

  private:
    void mirror();
    [[nodiscard]] bool may_lose_progress() const;
    void update_state();

    DocumentSession& session_;
    QWidget* window_;
    QAction* reshape_;
    QAction* sculpt_;
    QAction* from_form_;
    QAction* mirror_;
    QAction* join_;
};

}  // namespace roundwright::app
