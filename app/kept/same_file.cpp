#include "app/kept/same_file.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "core/base/limits.h"

namespace roundwright::app {
namespace {

/// With links followed as far as there is something to follow.
QString place_of(const QString& path) {
    const QFileInfo file(path);
    const QString canonical = file.canonicalFilePath();
    if (!canonical.isEmpty()) return canonical;
    const QString folder = QFileInfo(file.absolutePath()).canonicalFilePath();
    return folder.isEmpty() ? QDir::cleanPath(file.absoluteFilePath()) : folder + u'/' + file.fileName();
}

std::optional<FileStamp> stamp_at(const QString& path) {
    struct ::stat found {};
    if (Disk::in_use().look(QFile::encodeName(path), found) != 0) return std::nullopt;
    return stamp_of(found);
}

bool same_inode(const FileStamp& one, const FileStamp& other) {
    return one.inode == other.inode && one.device == other.device;
}

}  // namespace

bool is_of_file(const KeptHead& head, const QString& path) {
    if (head.document.isEmpty()) return false;
    if (place_of(head.document) == place_of(path)) return true;
    const auto now = stamp_at(path);
    if (!now || !same_inode(*now, head.began_from)) return false;
    const auto under_its_name = stamp_at(head.document);
    if (under_its_name && same_inode(*under_its_name, *now)) return true;
    return now->changed_ns == head.began_from.changed_ns && now->size == head.began_from.size;
}

bool was_changed_since(const KeptHead& head, const QString& path) {
    if (head.began_from.sha256.isEmpty()) return false;
    const auto now = read_whole(path, static_cast<qint64>(max_file_bytes));
    return !now.fault && now.stamp.sha256 != head.began_from.sha256;
}

}  // namespace roundwright::app
