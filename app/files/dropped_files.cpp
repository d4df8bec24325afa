#include "app/files/dropped_files.h"

#include <QCoreApplication>
#include <QDropEvent>
#include <QMimeData>
#include <QTimer>
#include <QUrl>

namespace roundwright::app {

namespace {

QString first_local_file(const QMimeData* data) {
    for (const QUrl& url : data->urls()) {
        if (url.isLocalFile()) return url.toLocalFile();
    }
    return {};
}

}  // namespace

DroppedFiles::DroppedFiles(QObject* parent) : QObject(parent) {
    QCoreApplication::instance()->installEventFilter(this);
}

DroppedFiles::~DroppedFiles() { QCoreApplication::instance()->removeEventFilter(this); }

bool DroppedFiles::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::DragEnter && event->type() != QEvent::Drop)
        return QObject::eventFilter(watched, event);
    auto* drop = static_cast<QDropEvent*>(event);
    const QString path = first_local_file(drop->mimeData());
    if (path.isEmpty()) return QObject::eventFilter(watched, event);
    drop->acceptProposedAction();
    if (event->type() == QEvent::Drop) QTimer::singleShot(0, this, [this, path] { Q_EMIT dropped(path); });
    return true;
}

}  // namespace roundwright::app
