#include "app/session/file_standing.h"

namespace roundwright::app {
namespace {

/// The toy in the window and the one in the file are the same from here on.
FileStanding agreed(FileStanding standing) {
    standing.edited = false;
    standing.recovered = false;
    standing.kept = false;
    standing.on_disk = OnDisk::same;
    return standing;
}

FileStanding saved(const FileStanding& standing) {
    FileStanding after = agreed(standing);
    after.newer_format = false;
    after.open_elsewhere = false;
    after.no_right = false;
    return after;
}

FileStanding with_copy(FileStanding standing, bool kept) {
    standing.kept = kept && counts_as_unsaved(standing);
    return standing;
}

FileStanding edited(FileStanding standing, bool edited) {
    standing.edited = edited;
    standing.kept = false;
    return standing;
}

/// A toy without a file cannot lose it.
FileStanding on_disk(FileStanding standing, OnDisk found) {
    if (standing.on_disk != OnDisk::never_saved) standing.on_disk = found;
    return with_copy(standing, standing.kept);
}

FileStanding recovered(FileStanding standing) {
    standing.edited = false;
    standing.recovered = true;
    standing.kept = true;
    return standing;
}

FileStanding with(FileStanding standing, bool FileStanding::*what, bool is) {
    standing.*what = is;
    return with_copy(standing, standing.kept);
}

}  // namespace

FileStanding after(FileStanding standing, FileEvent event) {
    switch (event) {
        case FileEvent::edited:
            return edited(standing, true);
        case FileEvent::back_to_saved:
            return edited(standing, false);
        case FileEvent::kept:
            return with_copy(standing, true);
        case FileEvent::keeping_failed:
            return with_copy(standing, false);
        case FileEvent::saved:
            return saved(standing);
        case FileEvent::save_failed:
            return standing;
        case FileEvent::changed_by_another:
            return on_disk(standing, OnDisk::changed);
        case FileEvent::made_unreadable:
            return on_disk(standing, OnDisk::unreadable);
        case FileEvent::gone:
            return on_disk(standing, OnDisk::gone);
        case FileEvent::back:
        case FileEvent::renamed:
            return on_disk(standing, OnDisk::same);
        case FileEvent::took_theirs:
            return agreed(standing);
        case FileEvent::recovered:
            return recovered(standing);
        case FileEvent::opened_elsewhere:
            return with(standing, &FileStanding::open_elsewhere, true);
        case FileEvent::closed_elsewhere:
            return with(standing, &FileStanding::open_elsewhere, false);
        case FileEvent::right_taken:
            return with(standing, &FileStanding::no_right, true);
        case FileEvent::right_given:
            return with(standing, &FileStanding::no_right, false);
    }
    return standing;
}

bool counts_as_unsaved(const FileStanding& standing) {
    if (standing.edited || standing.recovered) return true;
    // What another window has open is that window's to save.
    const bool lost = standing.on_disk == OnDisk::gone || standing.on_disk == OnDisk::unreadable;
    return lost && !standing.open_elsewhere;
}

ReadOnly read_only(const FileStanding& standing) {
    if (standing.newer_format) return ReadOnly::newer_format;
    if (standing.open_elsewhere) return ReadOnly::open_elsewhere;
    return standing.no_right ? ReadOnly::no_right : ReadOnly::no;
}

bool may_be_edited(const FileStanding& standing) {
    const ReadOnly why = read_only(standing);
    return why == ReadOnly::no || why == ReadOnly::no_right;
}

bool may_be_saved(const FileStanding& standing) {
    return standing.on_disk != OnDisk::never_saved && read_only(standing) == ReadOnly::no;
}

}  // namespace roundwright::app
