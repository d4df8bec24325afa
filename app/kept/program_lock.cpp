#include "app/kept/program_lock.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/file.h>
#include <utility>

#include <QFile>

namespace roundwright::app {
namespace {

constexpr mode_t private_mode = 0600;

/// Where a file system knows no locks, programs cannot see each other there; each holds its own.
bool lock(int file) { return ::flock(file, LOCK_EX | LOCK_NB) == 0 || errno == ENOLCK || errno == ENOTSUP; }

/// A lock that is there already can be had on a full disk, and on one that can only be read.
int open_lock(const QByteArray& path, Disk& disk) {
    constexpr int how = O_NOFOLLOW | O_NONBLOCK;
    const int file = disk.open(path, how | O_RDWR | O_CREAT, private_mode);
    if (file >= 0) return file;
    const int why = errno;
    const int there = disk.open(path, how | O_RDONLY, 0);
    if (there < 0) errno = why;
    return there;
}

}  // namespace

/// Whoever lets go removes the file, perhaps between our opening it and locking it: then it is another file.
ProgramLock::Taken ProgramLock::take(const QString& path, Disk& disk) {
    constexpr int tries = 10;
    for (int k = 0; k < tries; ++k) {
        const int file = open_lock(QFile::encodeName(path), disk);
        if (file < 0) return {nullptr, DiskFault{DiskStep::open, errno, path}};
        if (!lock(file)) {
            disk.close(file);
            return {};
        }
        std::unique_ptr<ProgramLock> taken(new ProgramLock(path, file, disk));
        if (taken->in_place()) return {std::move(taken)};
        disk.close(std::exchange(taken->file_, -1));
    }
    return {};
}

ProgramLock::~ProgramLock() {
    if (file_ < 0) return;
    if (in_place()) disk_.remove(QFile::encodeName(path_));
    disk_.close(file_);
}

bool ProgramLock::in_place() const {
    struct ::stat ours {};
    struct ::stat there {};
    return disk_.look_into(file_, ours) == 0 &&
           disk_.look_at_link(QFile::encodeName(path_), there) == 0 && ours.st_dev == there.st_dev &&
           ours.st_ino == there.st_ino;
}

}  // namespace roundwright::app
