#include "app/on_disk/file_watch.h"

#include <QFileInfo>

namespace roundwright::app {
namespace {

constexpr int moment_ms = 100;

}  // namespace

FileWatch::FileWatch(QObject* parent) : QObject(parent) {
    moment_.setSingleShot(true);
    moment_.setInterval(moment_ms);
    const auto stir = [this] {
        if (!moment_.isActive()) moment_.start();
    };
    connect(&watcher_, &QFileSystemWatcher::fileChanged, this, stir);
    connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, stir);
    connect(&moment_, &QTimer::timeout, this, &FileWatch::stirred);
}

void FileWatch::follow(const QString& path) {
    if (path == path_) return renew();
    path_ = path;
    moment_.stop();
    const QStringList before = watcher_.files() + watcher_.directories();
    if (!before.isEmpty()) watcher_.removePaths(before);
    renew();
}

void FileWatch::renew() {
    if (path_.isEmpty()) return;
    for (const QString& path : {path_, QFileInfo(path_).absolutePath()}) {
        const bool watched = watcher_.files().contains(path) || watcher_.directories().contains(path);
        if (!watched && QFileInfo::exists(path)) watcher_.addPath(path);
    }
}

}  // namespace roundwright::app
