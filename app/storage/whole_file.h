#pragma once

#include <cstdint>
#include <optional>

#include <QByteArray>
#include <QString>

#include "app/storage/disk.h"

namespace roundwright::app {

/// Which state of which file: two stamps are equal only if nothing wrote the file in between, as far as the
/// system tells. `sha256` tells whether what stands in it is the same, whatever its times say.
struct FileStamp {
    std::uint64_t device = 0;
    std::uint64_t inode = 0;
    std::int64_t size = 0;
    std::int64_t changed_ns = 0;  ///< st_mtim: last write
    std::int64_t moved_ns = 0;    ///< st_ctim: last change of anything, name and rights included
    QByteArray sha256;            ///< of the content; empty: not read

    friend bool operator==(const FileStamp&, const FileStamp&) = default;
};

/// The stamp of a file as the system gives it, content unread.
[[nodiscard]] FileStamp stamp_of(const struct ::stat& found);
/// The same but for the content, which may be unread in either.
[[nodiscard]] bool same_state(const FileStamp& one, const FileStamp& other);

struct ReadFile {
    QByteArray bytes;  ///< at most `most` + 1: longer than `most` means that the file is
    FileStamp stamp;
    std::optional<DiskFault> fault;
};

enum class Links {
    follow,  ///< what the maker named: a link's target is meant
    refuse   ///< files of the program's own: a link in their place is not ours
};

/// Reads a whole file, and says which state of it was read; if it was being written meanwhile, once more.
/// What is not an ordinary file is not waited for: a folder is EISDIR, a pipe, device or socket ENOTSUP.
[[nodiscard]] ReadFile read_whole(const QString& path, qint64 most, Links links = Links::follow,
                                  Disk& disk = Disk::in_use());

struct WriteWishes {
    Links links = Links::follow;
    bool is_private = false;  ///< readable by its owner alone (0600), whatever it was before
    /// Only in place of this state of the file: if another one is there, or none, nothing is written.
    std::optional<FileStamp> in_place_of{};
    /// Only where no file of that name is, of whatever kind.
    bool only_new = false;
    /// Else the file is there as soon as it is written, and a kill of the program leaves it, but only
    /// `make_safe` makes it survive a loss of power.
    bool safe_at_once = true;
};

struct WrittenFile {
    std::optional<DiskFault> fault;
    bool was_changed = false;       ///< not written: not what `in_place_of` or `only_new` wants
    FileStamp stamp{};              ///< of what is there now, after success
    bool other_names_left = false;  ///< hard links to the file of before keep what was in it
    bool attributes_lost = false;   ///< an extended attribute, the owner or the group could not be kept
    /// The folder could not be synced: the file is there, but might not be after a loss of power.
    bool not_yet_safe = false;
    /// What another program wrote at the very moment of the write, if it could be neither left in place nor
    /// put back: it has this name now. Mostly empty.
    QString theirs_beside{};

    [[nodiscard]] bool ok() const { return !fault && !was_changed; }
};

/// Writes a file whole or not at all: into a new file beside it, synced, renamed over it, the folder synced
/// (rename is atomic: POSIX.1-2017, rename). Where one state of the file alone may be replaced, the two are
/// exchanged instead (renameat2(2), Linux), and what comes out is looked at: if it is not that state, it is
/// put back, so what is written between the last look and the rename is not lost either. A file system that
/// cannot exchange has that moment. Rights, owner and extended attributes of the file of before are
/// kept. After a fault, what was there before is there still, and nothing beside it. A file that may not be
/// written stays (EACCES), and what is not an ordinary file too (EISDIR, ENOTSUP, and ELOOP: a link).
[[nodiscard]] WrittenFile write_whole(const QString& path, const QByteArray& bytes,
                                      const WriteWishes& wishes = {}, Disk& disk = Disk::in_use());

/// Makes sure that a file of the program's own, written without `safe_at_once`, survives a loss of power.
[[nodiscard]] std::optional<DiskFault> make_safe(const QString& path, Disk& disk = Disk::in_use());

/// Removes a file, and makes sure that it stays removed. A file that is not there is no fault.
[[nodiscard]] std::optional<DiskFault> remove_file(const QString& path, Disk& disk = Disk::in_use());

/// Makes a folder that only its owner may enter (0700), with those above it; one that is there is kept, and
/// made private, but those above it stay as they are. A link in its place is refused (ELOOP), and so is a
/// folder of another user (EPERM).
[[nodiscard]] std::optional<DiskFault> make_private_folder(const QString& path, Disk& disk = Disk::in_use());

}  // namespace roundwright::app
