#pragma once

#include <functional>

#include <QObject>

#include "app/session/document_session.h"

class QAction;
class QMenu;

namespace roundwright::app {

/// The Piece menu: the list of pieces, and how the current one starts, ends and is worked.
class PieceActions : public QObject {
    Q_OBJECT
  public:
    PieceActions(DocumentSession& session, QWidget* window);

    void fill(QMenu* menu);
    [[nodiscard]] QAction* add() const { return add_; }
    [[nodiscard]] QAction* rename() const { return rename_; }

  Q_SIGNALS:
    void piece_added();  ///< an empty one, that waits for its rounds

  private:
    void make_list_actions();
    void make_start_actions();
    void make_working_actions();
    QAction* on_piece(QAction* action, const std::function<void()>& act);
    void remove();
    [[nodiscard]] bool may_remove(const QString& name, const QStringList& sewn);
    void ask_name();
    void ask_make();
    /// A start on a chain: asks for the number of chains.
    void ask_chains_between();
    void ask_chains(const QString& what, int usual, const std::function<Start(int)>& start);
    void update_state();

    DocumentSession& session_;
    QWidget* window_;
    QList<QAction*> of_piece_;
    QAction* add_ = nullptr;
    QAction* duplicate_ = nullptr;
    QAction* rename_ = nullptr;
    QAction* remove_ = nullptr;
    QAction* earlier_ = nullptr;
    QAction* later_ = nullptr;
    QAction* previous_ = nullptr;
    QAction* next_ = nullptr;
    QList<QAction*> starts_;    ///< by index of Start
    QList<QAction*> joinings_;  ///< by Joining
    QAction* drawn_closed_ = nullptr;
    QAction* starts_at_top_ = nullptr;
    QAction* make_ = nullptr;
};

}  // namespace roundwright::app
