#include "app/session/save_bytes.h"

#include <QFileInfo>
#include <QSaveFile>

namespace roundwright::app {
namespace {

/// The words must be taken where a step fails: the file forgets them with the next.
std::optional<QString> written_whole(QFileDevice& file, const QByteArray& bytes) {
    const bool written = file.write(bytes) == bytes.size() && file.flush();
    return written ? std::nullopt : std::optional(file.errorString());
}

std::optional<QString> write_to_device(const QString& path, const QByteArray& bytes) {
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly | QIODevice::Unbuffered)) return file.errorString();
    return written_whole(file, bytes);
}

}  // namespace

bool is_device(const QString& path) {
    const QFileInfo info(path);
    return info.exists() && !info.isFile() && !info.isDir();
}

std::optional<QString> save_bytes(const QString& path, const QByteArray& bytes) {
    if (is_device(path)) return write_to_device(path, bytes);
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly)) return file.errorString();
    if (const auto problem = written_whole(file, bytes)) return problem;
    return file.commit() ? std::nullopt : std::optional(file.errorString());
}

}  // namespace roundwright::app
