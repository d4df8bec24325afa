#pragma once

#include <QTabBar>
#include <QToolButton>
#include <QWidget>

#include "app/session/document_session.h"

namespace roundwright::app {

/// The whole toy and its pieces as a row of tabs, with a button for a new piece. Double click renames,
/// dragging moves; the toy's own tab stays the first.
class PieceBar : public QWidget {
    Q_OBJECT
  public:
    PieceBar(DocumentSession& session, QAction* new_piece, QAction* rename, QWidget* parent = nullptr);

  private:
    void refill();
    void follow(const ChangeSet& changes);
    void show_current();
    void choose(int tab);
    void moved(int from, int to);
    bool eventFilter(QObject* watched, QEvent* event) override;

    DocumentSession& session_;
    QTabBar* tabs_;
    bool refilling_ = false;
};

/// "Head", or "Ear ×2" where the toy needs more than one.
[[nodiscard]] QString piece_title(const Piece& piece);

}  // namespace roundwright::app
