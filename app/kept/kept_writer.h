#pragma once

#include <mutex>
#include <set>

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
///
/// A copy is there for the next start as soon as it is written, so that a kill of the program loses nothing
/// however slow the disk is; that it survives a loss of power is made sure of afterwards, and the one before
/// stays until then. So there are three at most: the last safe one, one that is being synced, and the newest.
class KeptWriter {
  public:
    /// Orders what is asked for; from 1.
    using Turn = std::uint64_t;

    KeptWriter(KeptFolder folder, QString name);

    /// Gives back when a kill would leave the work, or why it is not written. Does nothing if a later turn
    /// was done.
    [[nodiscard]] std::optional<DiskFault> keep(Turn turn, const UnsavedWork& work);

    struct Safe {
        Turn turn = 0;                     ///< the last one that was done when this was asked for
        std::optional<DiskFault> fault{};  ///< why a loss of power may undo it
    };
    /// Makes the newest copy safe from a loss of power, and removes those before it. May take as long as the
    /// disk does, and keeps nobody else waiting.
    [[nodiscard]] Safe make_safe();
    /// There is nothing to keep.
    [[nodiscard]] std::optional<DiskFault> remove(Turn turn);

  private:
    [[nodiscard]] std::optional<DiskFault> hold_lock();
    [[nodiscard]] KeptCopy copy_of(const UnsavedWork& work);
    void remove_superseded();

    const KeptFolder folder_;
    const QString name_;
    std::mutex mutex_;  ///< guards all below
    Turn done_ = 0;
    std::uint64_t number_ = 0;  ///< of the newest copy
    std::uint64_t safe_ = 0;    ///< of the newest one that is synced
    std::uint64_t gone_ = 0;    ///< up to here they were removed
    std::multiset<std::uint64_t> syncing_;
    LockFile lock_;
};

}  // namespace roundwright::app
