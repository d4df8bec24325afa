#include "app/files/recent_files.h"

#include <QDir>
#include <QFileInfo>
#include <QMenu>
#include <QSettings>

#include "app/kit/action_keys.h"

namespace roundwright::app {
namespace {

constexpr qsizetype most_files = 8;
const auto setting = QStringLiteral("recent-files");

void store(const QStringList& paths) { QSettings().setValue(setting, paths); }

}  // namespace

QStringList RecentFiles::paths() const { return QSettings().value(setting).toStringList(); }

void RecentFiles::add(const QString& path) {
    QStringList list = paths();
    list.removeAll(path);
    list.prepend(path);
    store(list.mid(0, most_files));
}

void RecentFiles::remove(const QString& path) {
    QStringList list = paths();
    list.removeAll(path);
    store(list);
}

void RecentFiles::fill(QMenu* menu) {
    menu->clear();
    int number = 1;
    for (const auto& path : paths()) {
        const QString name = QFileInfo(path).fileName().replace(u'&', QStringLiteral("&&"));
        const QString folder =
            QDir::toNativeSeparators(QFileInfo(path).path()).replace(u'&', QStringLiteral("&&"));
        auto* action = menu->addAction(QStringLiteral("&%1  %2   %3").arg(number).arg(name, folder), this,
                                       [this, path] { Q_EMIT chosen(path); });
        action->setObjectName(QStringLiteral("recent.%1").arg(number++));
        action->setShortcuts(ActionKeys::instance().keys(action->objectName()));
    }
    menu->setEnabled(!menu->isEmpty());
}

}  // namespace roundwright::app
