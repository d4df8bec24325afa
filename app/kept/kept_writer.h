#pragma once

#include <mutex>

#include "app/kept/kept_folder.h"
#include "core/toy/toy.h"

namespace roundwright::app {

/// All that a window has not saved, at one moment: its toy shares its pieces with the open one, so taking it
/// costs next to nothing.
struct UnsavedWork {
    Toy toy;
    QString document;
    FileStamp began_from{};
    PendingEntry typed{};

    friend bool operator==(const UnsavedWork&, const UnsavedWork&) = default;
};

/// Writes one window's kept copy, from whichever thread: what was asked for first never takes the place of
/// what was asked for later. Holds the window's lock.
class KeptWriter {
  public:
    /// Orders what is asked for; from 1.
    using Turn = std::uint64_t;

    KeptWriter(KeptFolder folder, QString name);

    /// Gives back when the work is safely on disk, or why it is not. Does nothing if a later turn was done.
    [[nodiscard]] std::optional<DiskFault> keep(Turn turn, const UnsavedWork& work);
    /// There is nothing to keep.
    [[nodiscard]] std::optional<DiskFault> remove(Turn turn);

  private:
    [[nodiscard]] std::optional<DiskFault> hold_lock();
    [[nodiscard]] KeptCopy copy_of(const UnsavedWork& work);

    const KeptFolder folder_;
    const QString name_;
    std::mutex mutex_;  ///< guards all below
    Turn done_ = 0;
    std::uint64_t number_ = 0;
    LockFile lock_;
};

}  // namespace roundwright::app
