#pragma once

#include <cerrno>
#include <utility>

#include "app/storage/disk.h"

namespace roundwright::app {

/// A file that closes itself.
class OpenedFile {
  public:
    OpenedFile(Disk& disk, int file) : disk_(disk), file_(file) {}
    ~OpenedFile() {
        if (is_open()) disk_.close(file_);
    }
    OpenedFile(const OpenedFile&) = delete;
    OpenedFile& operator=(const OpenedFile&) = delete;
    [[nodiscard]] int get() const { return file_; }
    [[nodiscard]] bool is_open() const { return file_ >= 0; }
    /// False: the system says only now that what was written is not there. A close that was interrupted has
    /// closed (close(2), Linux).
    [[nodiscard]] bool close() { return disk_.close(std::exchange(file_, -1)) == 0 || errno == EINTR; }

  private:
    Disk& disk_;
    int file_;
};

/// A call that is made again whenever a signal has interrupted it.
[[nodiscard]] int again_if_interrupted(const auto& call) {
    int result = call();
    while (result < 0 && errno == EINTR) result = call();
    return result;
}

/// Writes all of it, however little is taken at once. False, with errno: not all.
[[nodiscard]] bool write_all(Disk& disk, int file, const QByteArray& bytes);

/// Reads to the end, or `most` + 1 bytes. False, with errno: not all.
[[nodiscard]] bool read_all(Disk& disk, int file, qint64 most, QByteArray& bytes);

}  // namespace roundwright::app
