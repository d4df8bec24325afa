#include "app/storage/state_folder.h"

#include <QDir>

namespace roundwright::app {

QString usual_state_folder() {
    const QString state = qEnvironmentVariable("XDG_STATE_HOME");
    // The specification: a path that is not absolute is to be ignored.
    const bool is_usable = QDir::isAbsolutePath(state);
    const QString home = is_usable ? state : QDir::homePath() + QStringLiteral("/.local/state");
    return home + QStringLiteral("/roundwright");
}

}  // namespace roundwright::app
