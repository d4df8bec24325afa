#pragma once

#include <QTabBar>
#include <QToolButton>
#include <QWidget>

#include "app/session/document_session.h"

namespace roundwright::app {

/// The pieces of the toy as a row of tabs, with a button for a new one. Double click renames, dragging moves.
class PieceBar : public QWidget {
    Q_OBJECT
  public:
    PieceBar(DocumentSession& session, QAction* new_piece, QAction* rename, QWidget* parent = nullptr);

  private:
    void refill();
    void follow(const ChangeSet& changes);
    void show_current(int piece);
    void moved(int from, int to);

    DocumentSession& session_;
    QTabBar* tabs_;
    bool refilling_ = false;
};

/// "Head", or "Ear ×2" where the toy needs more than one.
[[nodiscard]] QString piece_title(const Piece& piece);

}  // namespace roundwright::app
