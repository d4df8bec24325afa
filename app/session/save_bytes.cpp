#include "app/session/save_bytes.h"

#include <QSaveFile>

namespace roundwright::app {

std::optional<QString> save_bytes(const QString& path, const QByteArray& bytes) {
    QSaveFile file(path);
    const bool written =
        file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() && file.commit();
    return written ? std::nullopt : std::optional(file.errorString());
}

}  // namespace roundwright::app
