#include "app/files/last_toy.h"

#include <QSettings>

namespace roundwright::app {
namespace {

const auto path_setting = QStringLiteral("last-toy/path");
const auto piece_setting = QStringLiteral("last-toy/piece");
const auto typed_setting = QStringLiteral("last-toy/typed");
const auto typed_piece_setting = QStringLiteral("last-toy/typed-for-piece");

}  // namespace

LastToy last_toy() {
    const QSettings settings;
    return {settings.value(path_setting).toString(),
            settings.value(piece_setting).toInt(),
            {settings.value(typed_setting).toString(), settings.value(typed_piece_setting).toInt()}};
}

void forget_last_typing() {
    QSettings settings;
    settings.remove(typed_setting);
    settings.sync();
}

/// A toy without a file leaves the one before it in its place, unless something was typed for it. Of changes
/// that the maker gave up, what was typed is given up too.
bool keep_last_toy(const DocumentSession& session, const PendingEntry& pending) {
    const QString typed = session.modified() ? QString() : pending.text;
    QSettings settings;
    settings.setValue(typed_setting, typed);
    settings.setValue(typed_piece_setting, pending.piece);
    if (!session.path().isEmpty() || !typed.isEmpty()) {
        settings.setValue(path_setting, session.path());
        settings.setValue(piece_setting, session.current_piece());
    }
    settings.sync();
    return settings.status() == QSettings::NoError;
}

}  // namespace roundwright::app
