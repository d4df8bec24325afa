#include "app/versions/version_actions.h"

#include "app/kit/action_maker.h"
#include "app/versions/versions_dialog.h"

namespace roundwright::app {

VersionActions::VersionActions(DocumentSession& session, VersionKeeper& keeper, QWidget* window)
    : QObject(window), show_(make_action(window, "file.versions")) {
    show_->setToolTip(tr("What this toy was at earlier times, to look at and take back"));
    connect(show_, &QAction::triggered, this, [&session, &keeper, window] {
        auto* dialog = new VersionsDialog(session, keeper, window);
        dialog->setAttribute(Qt::WA_DeleteOnClose);
        dialog->open();
    });
}

void VersionActions::fill(QMenu* menu) const { menu->addAction(show_); }

}  // namespace roundwright::app
