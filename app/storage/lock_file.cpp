#include "app/storage/lock_file.h"

#include <cerrno>
#include <chrono>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <thread>
#include <unistd.h>
#include <utility>

#include <QFile>

namespace roundwright::app {
namespace {

constexpr mode_t private_mode = 0600;
constexpr int tries = 8;
constexpr auto between_tries = std::chrono::milliseconds(2);

/// A file that was removed while we waited for it locks nothing any more.
bool is_still_there(int file, const QByteArray& name) {
    struct ::stat held {};
    struct ::stat found {};
    return ::fstat(file, &held) == 0 && ::lstat(name.constData(), &found) == 0 &&
           held.st_dev == found.st_dev && held.st_ino == found.st_ino;
}

int open_own(const QByteArray& name, int how) {
    return ::open(name.constData(), how | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK, private_mode);
}

/// A lock that is there already can be had on a full disk, and on one that can only be read.
int open_or_make(const QByteArray& name) {
    const int file = open_own(name, O_RDWR | O_CREAT);
    if (file >= 0) return file;
    const int why = errno;
    const int there = open_own(name, O_RDONLY);
    if (there < 0) errno = why;
    return there;
}

}  // namespace

LockFile::LockFile(LockFile&& other) noexcept
    : path_(std::move(other.path_)), file_(std::exchange(other.file_, -1)) {}

LockFile& LockFile::operator=(LockFile&& other) noexcept {
    if (this == &other) return *this;
    release();
    path_ = std::move(other.path_);
    file_ = std::exchange(other.file_, -1);
    return *this;
}

/// Someone who only asks whether a lock is held has it for a moment: that is waited for.
LockAnswer LockFile::take(const QString& path) {
    release();
    const QByteArray name = QFile::encodeName(path);
    LockAnswer answer = LockAnswer::impossible;
    for (int attempt = 0; attempt < tries; ++attempt) {
        if (attempt > 0) std::this_thread::sleep_for(between_tries);
        const int file = open_or_make(name);
        if (file < 0) {
            error_ = errno;
            return LockAnswer::impossible;
        }
        const bool locked = ::flock(file, LOCK_EX | LOCK_NB) == 0;
        if (locked && is_still_there(file, name)) {
            file_ = file;
            path_ = path;
            return LockAnswer::taken;
        }
        error_ = errno;
        answer = !locked && error_ == EWOULDBLOCK ? LockAnswer::held_elsewhere : LockAnswer::impossible;
        ::close(file);
    }
    return answer;
}

bool LockFile::is_in_place() const { return file_ >= 0 && is_still_there(file_, QFile::encodeName(path_)); }

void LockFile::release() {
    if (file_ < 0) return;
    const QByteArray name = QFile::encodeName(path_);
    if (is_still_there(file_, name)) ::unlink(name.constData());
    ::close(file_);
    file_ = -1;
    path_.clear();
}

void LockFile::write(const QByteArray& words) const {
    if (file_ < 0) return;
    const auto size = static_cast<std::size_t>(words.size());
    // Of use to other windows only: where the disk is full they know the file by its name alone.
    if (::ftruncate(file_, 0) != 0 || ::pwrite(file_, words.constData(), size, 0) < 0) return;
}

bool LockFile::is_held(const QString& path) {
    const int file = open_own(QFile::encodeName(path), O_RDONLY);
    if (file < 0) return false;
    const bool held = ::flock(file, LOCK_SH | LOCK_NB) != 0 && errno == EWOULDBLOCK;
    ::close(file);
    return held;
}

}  // namespace roundwright::app
