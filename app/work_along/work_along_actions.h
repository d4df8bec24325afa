#pragma once

#include <QObject>
#include <QPointer>

#include "app/session/document_session.h"

class QAction;
class QMenu;

namespace roundwright::app {

class WorkAlongView;

/// Working along in the menus: the window for it, and marking how far the piece is worked.
class WorkAlongActions : public QObject {
    Q_OBJECT
  public:
    WorkAlongActions(DocumentSession& session, QWidget* window);

    void fill_pattern_menu(QMenu* menu) const;
    void fill_round_menu(QMenu* menu) const;
    [[nodiscard]] WorkAlongView* view() const;

  private:
    void open();
    void mark_worked();
    void update_state();

    DocumentSession& session_;
    QWidget* window_;
    QAction* work_along_;
    QAction* worked_up_to_here_;
    QPointer<WorkAlongView> view_;
};

}  // namespace roundwright::app
