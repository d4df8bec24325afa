#pragma once

#include <QString>

#include "app/storage/lock_file.h"
#include "app/storage/whole_file.h"

namespace roundwright::app {

/// Which window may write a file, among those of this user on this computer: the first that has it open. It
/// holds a lock in the state folder (`open/<SHA-256 of the file's canonical path>.lock`) that names the file
/// on its disk too, so that a hard link is known as the same file. Others, and other computers, are noticed
/// by what they write (FileFollower). Where there can be no lock, every window may write.
class FileClaim {
  public:
    /// `folder`: of the locks; made when first needed.
    explicit FileClaim(QString folder) : folder_(std::move(folder)) {}

    /// Claims a file, in place of the one before. False: another window has it. `stamp` may be empty.
    [[nodiscard]] bool take(const QString& path, const FileStamp& stamp = {});
    void give_back();
    /// The file has another place on its disk since it was written.
    void follow(const FileStamp& stamp);
    /// Another window has it now.
    [[nodiscard]] bool is_taken_elsewhere(const QString& path, const FileStamp& stamp = {}) const;
    [[nodiscard]] bool is_mine(const QString& path) const;
    [[nodiscard]] const QString& folder() const { return folder_; }

  private:
    [[nodiscard]] QString lock_path(const QString& path) const;
    [[nodiscard]] bool is_held_by_another_name(const FileStamp& stamp, const QString& own) const;

    QString folder_;
    LockFile lock_;
    QByteArray place_;  ///< that the lock file names
};

}  // namespace roundwright::app
