#pragma once

#include <QList>
#include <QObject>

#include "app/own_pieces/own_pieces_folder.h"
#include "app/session/document_session.h"

class QAction;
class QMenu;

namespace roundwright::app {

/// Takes a piece from toy to toy: by the clipboard, and by the folder of own pieces.
class OwnPieceActions : public QObject {
    Q_OBJECT
  public:
    OwnPieceActions(DocumentSession& session, QWidget* window,
                    OwnPiecesFolder folder = OwnPiecesFolder::usual());

    void fill_edit_menu(QMenu* menu) const;
    void fill_piece_menu(QMenu* menu) const;
    /// Puts the pieces of another toy in behind the current one, as one step.
    bool insert(const Toy& from, const QString& step);

  Q_SIGNALS:
    void told(const QString& words);

  private:
    void copy();
    void paste();
    void keep();
    void choose();
    void update_state();
    [[nodiscard]] Toy current() const;

    DocumentSession& session_;
    QWidget* window_;
    OwnPiecesFolder folder_;
    QAction* copy_;
    QAction* paste_;
    QAction* keep_;
    QAction* choose_;
};

}  // namespace roundwright::app
