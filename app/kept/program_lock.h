#pragma once

#include <memory>
#include <optional>

#include <QString>

#include "app/storage/disk.h"

namespace roundwright::app {

/// A lock on a file of the program's own, held until it is destroyed or its program is gone, however it went:
/// flock(2) belongs to the open file, and the system closes that. So nothing has to be guessed about process
/// numbers, and a program that is only stopped still holds it.
class ProgramLock {
  public:
    struct Taken {
        std::unique_ptr<ProgramLock> lock;  ///< null: another one holds it, or `fault`
        std::optional<DiskFault> fault{};
    };
    /// Takes the lock if it is free, never waits. A link in the file's place is refused.
    [[nodiscard]] static Taken take(const QString& path, Disk& disk = Disk::in_use());

    /// Lets go of it, and removes its file.
    ~ProgramLock();
    ProgramLock(const ProgramLock&) = delete;
    ProgramLock& operator=(const ProgramLock&) = delete;

    /// The locked file is still the one of that name: nobody cleared the folder away.
    [[nodiscard]] bool in_place() const;

  private:
    ProgramLock(QString path, int file, Disk& disk) : path_(std::move(path)), file_(file), disk_(disk) {}

    QString path_;
    int file_;
    Disk& disk_;
};

}  // namespace roundwright::app
