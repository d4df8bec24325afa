#pragma once

#include <QList>
#include <QObject>

#include "app/assembly/joins_panel.h"

class QAction;
class QMenu;

namespace roundwright::app {

/// The menu of the whole toy: itself on show, what of it, and where the picked piece is sewn on.
class ToyActions : public QObject {
    Q_OBJECT
  public:
    ToyActions(DocumentSession& session, ToyState& state, JoinsPanel& joins, QWidget* window);

    void fill(QMenu* menu) const;
    /// Whether the keys that move things move the picked piece.
    [[nodiscard]] bool can_move() const;
    /// By rounds towards the last of what it is sewn to, and stitches to the viewer's right.
    void nudge(int rounds, int right);

  Q_SIGNALS:
    /// What can be moved is another, or none.
    void can_move_changed();

  private:
    QAction* on_join(const char* id, const std::function<void(std::size_t join, int side)>& act);
    void update_state();
    /// The second of a pair mirrors the first.
    [[nodiscard]] int side() const;

    DocumentSession& session_;
    ToyState& state_;
    JoinsPanel& joins_;
    QAction* whole_;
    QAction* together_;
    QAction* apart_;
    QAction* hide_;
    QAction* show_all_;
    QList<QAction*> of_join_;
};

}  // namespace roundwright::app
