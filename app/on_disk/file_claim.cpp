#include "app/on_disk/file_claim.h"

#include <algorithm>

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "app/versions/version_store.h"

namespace roundwright::app {
namespace {

constexpr qint64 most_lock_bytes = 256;
const auto suffix = QStringLiteral(".lock");

/// "2049 1311": where on which disk.
QByteArray place_on_disk(const FileStamp& stamp) {
    return QByteArray::number(static_cast<qulonglong>(stamp.device)) + ' ' +
           QByteArray::number(static_cast<qulonglong>(stamp.inode)) + '\n';
}

}  // namespace

QString FileClaim::lock_path(const QString& path) const {
    const QByteArray name = QFile::encodeName(canonical_toy_path(path));
    const QByteArray hash = QCryptographicHash::hash(name, QCryptographicHash::Sha256).toHex();
    return folder_ + u'/' + QString::fromLatin1(hash) + suffix;
}

bool FileClaim::is_mine(const QString& path) const {
    return lock_.is_held() && lock_.path() == lock_path(path);
}

bool FileClaim::take(const QString& path, const FileStamp& stamp) {
    // Each on its own, since only the last name of a path is looked at for links.
    if (make_private_folder(QFileInfo(folder_).path()) || make_private_folder(folder_)) {
        give_back();
        return true;
    }
    const QString own = lock_path(path);
    if (!is_mine(path)) {
        place_.clear();
        if (lock_.take(own) == LockAnswer::held_elsewhere) return false;
    }
    follow(stamp);  // before others are looked at: of two windows at the same moment, none has it unseen
    if (is_held_by_another_name(stamp, own)) {
        give_back();
        return false;
    }
    return true;
}

void FileClaim::give_back() {
    lock_.release();
    place_.clear();
}

void FileClaim::follow(const FileStamp& stamp) {
    if (stamp.inode == 0 || place_ == place_on_disk(stamp)) return;
    place_ = place_on_disk(stamp);
    lock_.write(place_);
}

bool FileClaim::is_taken_elsewhere(const QString& path, const FileStamp& stamp) const {
    if (is_mine(path)) return false;
    const QString own = lock_path(path);
    return LockFile::is_held(own) || is_held_by_another_name(stamp, own);
}

bool FileClaim::is_held_by_another_name(const FileStamp& stamp, const QString& own) const {
    if (stamp.inode == 0) return false;
    const QByteArray place = place_on_disk(stamp);
    const auto locks = QDir(folder_).entryInfoList({u'*' + suffix}, QDir::Files);
    return std::ranges::any_of(locks, [&](const QFileInfo& lock) {
        const QString path = folder_ + u'/' + lock.fileName();
        if (path == own || path == lock_.path()) return false;
        return read_whole(path, most_lock_bytes, Links::refuse).bytes == place && LockFile::is_held(path);
    });
}

}  // namespace roundwright::app
