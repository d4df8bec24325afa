#pragma once

namespace roundwright::app {

/// What stands under the file's name now, held against what this window last read from it or wrote to it.
enum class OnDisk {
    never_saved,  ///< the toy has no file yet
    same,         ///< the same content, whatever its times say
    changed,      ///< another toy: somebody else wrote it
    unreadable,   ///< something that is no toy, or cannot be read
    gone
};

/// Why the open toy is read only, the weightiest reason first.
enum class ReadOnly {
    newer_format,    ///< written by a newer program: changing it here would lose what is new
    open_elsewhere,  ///< another window has it open and may be changing it
    no_right,        ///< it may be changed here, but not saved under this name
    no
};

/// How the toy in the window and its file stand to each other.
struct FileStanding {
    bool edited = false;     ///< changed since it was opened, saved or brought back
    bool recovered = false;  ///< brought back after a crash, and not saved since
    bool kept = false;       ///< a kept copy holds all that is not saved
    OnDisk on_disk = OnDisk::never_saved;
    bool newer_format = false;
    bool open_elsewhere = false;
    bool no_right = false;

    friend bool operator==(const FileStanding&, const FileStanding&) = default;
};

enum class FileEvent {
    edited,              ///< also: undone or redone to anything but what was saved
    back_to_saved,       ///< undone or redone to what was saved, opened or brought back
    kept,                ///< a kept copy of all that is not saved is safely on disk
    keeping_failed,      ///< none could be written
    saved,               ///< under its own name or another one
    save_failed,         ///< nothing was written
    changed_by_another,  ///< another toy stands in the file
    made_unreadable,     ///< what stands there is no toy
    gone,                ///< nothing does
    back,                ///< what this window knows stands there again, or still
    took_theirs,         ///< the toy in the window is now the one in the file
    renamed,             ///< the file has another name, and this window follows it
    recovered,           ///< a kept copy is in the window, and kept on
    opened_elsewhere,    ///< another window has the file
    closed_elsewhere,    ///< this window has it now
    right_taken,         ///< it can no longer be written
    right_given
};

/// What an event makes of it. Every event may come at any time; one that means nothing changes nothing.
[[nodiscard]] FileStanding after(FileStanding standing, FileEvent event);

/// The window has something that no file has: closing asks, and it is kept.
[[nodiscard]] bool counts_as_unsaved(const FileStanding& standing);
[[nodiscard]] ReadOnly read_only(const FileStanding& standing);
/// May be changed here; whether it can be saved under its name is another matter.
[[nodiscard]] bool may_be_edited(const FileStanding& standing);
/// Can be saved under its own name, as far as is known.
[[nodiscard]] bool may_be_saved(const FileStanding& standing);

}  // namespace roundwright::app
