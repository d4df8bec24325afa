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
#include <QFileInfo>

namespace roundwright::app {
namespace {

constexpr mode_t private_mode = 0600;
constexpr int tries = 8;
constexpr auto between_tries = std::chrono::milliseconds(2);

/// Where a lock lies. A link in the place of its folder is not followed, whenever it was put there.
class Place {
  public:
    explicit Place(const QString& path)
        : name_(QFile::encodeName(QFileInfo(path).fileName())),
          folder_(::open(QFile::encodeName(QFileInfo(path).path()).constData(),
                         O_PATH | O_DIRECTORY | O_NOFOLLOW | O_CLOEXEC)),
          error_(folder_ < 0 ? errno : 0) {}
    ~Place() {
        if (folder_ >= 0) ::close(folder_);
    }
    Place(const Place&) = delete;
    Place& operator=(const Place&) = delete;

    [[nodiscard]] int open(int how) const {
        if (folder_ >= 0)
            return ::openat(folder_, name_.constData(), how | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK,
                            private_mode);
        errno = error_;
        return -1;
    }
    /// A lock that is there already can be had on a full disk, and on one that can only be read.
    [[nodiscard]] int open_or_make() const {
        const int file = open(O_RDWR | O_CREAT);
        if (file >= 0) return file;
        const int why = errno;
        const int there = open(O_RDONLY);
        if (there < 0) errno = why;
        return there;
    }
    /// A file that was removed while we waited for it locks nothing any more.
    [[nodiscard]] bool still_has(int file) const {
        struct ::stat held {};
        struct ::stat found {};
        return folder_ >= 0 && ::fstat(file, &held) == 0 &&
               ::fstatat(folder_, name_.constData(), &found, AT_SYMLINK_NOFOLLOW) == 0 &&
               held.st_dev == found.st_dev && held.st_ino == found.st_ino;
    }
    void remove() const { ::unlinkat(folder_, name_.constData(), 0); }

  private:
    QByteArray name_;
    int folder_;
    int error_;
};

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
    const Place place(path);
    LockAnswer answer = LockAnswer::impossible;
    for (int attempt = 0; attempt < tries; ++attempt) {
        if (attempt > 0) std::this_thread::sleep_for(between_tries);
        const int file = place.open_or_make();
        if (file < 0) {
            error_ = errno;
            return LockAnswer::impossible;
        }
        const bool locked = ::flock(file, LOCK_EX | LOCK_NB) == 0;
        if (locked && place.still_has(file)) {
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

bool LockFile::is_in_place() const { return file_ >= 0 && Place(path_).still_has(file_); }

void LockFile::release() {
    if (file_ < 0) return;
    if (const Place place(path_); place.still_has(file_)) place.remove();
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
    const int file = Place(path).open(O_RDONLY);
    if (file < 0) return false;
    const bool held = ::flock(file, LOCK_SH | LOCK_NB) != 0 && errno == EWOULDBLOCK;
    ::close(file);
    return held;
}

}  // namespace roundwright::app
