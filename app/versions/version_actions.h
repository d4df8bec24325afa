#pragma once

#include <QObject>

#include "app/session/document_session.h"
#include "app/versions/version_keeper.h"

class QAction;
class QMenu;

namespace roundwright::app {

/// Earlier versions in the File menu.
class VersionActions : public QObject {
    Q_OBJECT
  public:
    VersionActions(DocumentSession& session, VersionKeeper& keeper, QWidget* window);

    void fill(QMenu* menu) const;

  private:
    QAction* show_;
};

}  // namespace roundwright::app
