#pragma once

#include <QByteArray>
#include <QString>

namespace roundwright::app {

enum class LockAnswer {
    taken,
    held_elsewhere,  ///< by another holder, of this program or another one
    impossible       ///< the file cannot be made or locked
};

/// A lock that the system holds for as long as this object, or its program, lives (flock(2)): however the
/// program ends, the lock is free at once. The file is made for it and goes with it; it may hold some words.
class LockFile {
  public:
    LockFile() = default;
    ~LockFile() { release(); }
    LockFile(LockFile&& other) noexcept;
    LockFile& operator=(LockFile&& other) noexcept;
    LockFile(const LockFile&) = delete;
    LockFile& operator=(const LockFile&) = delete;

    /// Instead of the one held before. The folder must be there, and not as a link (ENOTDIR).
    [[nodiscard]] LockAnswer take(const QString& path);
    void release();
    [[nodiscard]] bool is_held() const { return file_ >= 0; }
    /// Held, and still the file of its name: nobody has cleared the folder away.
    [[nodiscard]] bool is_in_place() const;
    /// The system's errno where the last lock was impossible.
    [[nodiscard]] int error() const { return error_; }
    [[nodiscard]] const QString& path() const { return path_; }
    /// What others can read in it.
    void write(const QByteArray& words) const;

    /// Whether anybody holds a lock of this name now.
    [[nodiscard]] static bool is_held(const QString& path);

  private:
    QString path_;
    int file_ = -1;
    int error_ = 0;
};

}  // namespace roundwright::app
