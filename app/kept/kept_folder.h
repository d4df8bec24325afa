#pragma once

#include <optional>
#include <vector>

#include "app/kept/left_behind.h"

namespace roundwright::app {

/// A file of a window's kept copy.
struct KeptFile {
    QString path;
    std::uint64_t number = 0;  ///< as its name has it; programs before this one gave none
};

/// The user's own folder of kept copies (0700), `$XDG_STATE_HOME/roundwright/kept`: of each running window a
/// lock, NAME.lock, and, while it has unsaved work, NAME.NUMBER.kept (0600), of which the one with the
/// highest number that is whole counts: a second and third are there while a newer one is not safe yet. What
/// in it is a link, another user's, or has a second name is not ours and is left alone. May be used from any
/// thread.
class KeptFolder {
  public:
    /// `state_folder`: the program's; empty: the usual place.
    explicit KeptFolder(const QString& state_folder = {}, Disk& disk = Disk::in_use());

    /// Makes it, if it is not there.
    [[nodiscard]] std::optional<DiskFault> make() const;
    [[nodiscard]] const QString& path() const { return path_; }
    /// Of the program itself, where older programs had their notes.
    [[nodiscard]] const QString& state_folder() const { return state_folder_; }
    /// For a window that begins to run.
    [[nodiscard]] static QString new_name();
    [[nodiscard]] QString kept_file(const QString& name, std::uint64_t number) const;
    [[nodiscard]] QString lock_file(const QString& name) const;

    /// Names of those who have a lock here now and are not `but`.
    [[nodiscard]] std::vector<QString> running(const QString& but) const;
    /// The highest number of a kept copy here.
    [[nodiscard]] std::uint64_t highest_number() const;
    /// Takes away what is left of programs that are gone and is no kept copy. `window`: whose who does so.
    void clear_up(const QString& window) const;
    /// What programs that are gone left, the latest first.
    [[nodiscard]] std::vector<LeftBehind> left_behind() const;

    /// Files of a window's copies, the oldest first.
    [[nodiscard]] std::vector<KeptFile> files_of(const QString& name) const;
    /// The newest copy of a window that is whole.
    [[nodiscard]] std::optional<KeptCopy> newest_of(const QString& name) const;
    /// Removes a window's copies, the oldest first, so that none comes to light again once a newer one is
    /// gone; and makes sure that they stay removed.
    [[nodiscard]] std::optional<DiskFault> remove_all(const QString& name) const;

    /// The kept copy, if its file is ours and whole.
    [[nodiscard]] std::optional<KeptCopy> read(const QString& file) const;
    [[nodiscard]] Disk& disk() const { return disk_; }

  private:
    [[nodiscard]] bool is_in_place() const;
    [[nodiscard]] std::vector<QString> names(const QString& suffix) const;
    [[nodiscard]] std::vector<QString> windows() const;
    [[nodiscard]] std::optional<LeftBehind> left_by(const QString& name) const;

    QString state_folder_;
    QString path_;
    Disk& disk_;
};

/// Something that the program itself wrote: a file of this user, no link, without a second name.
[[nodiscard]] bool is_ours(const QString& file, Disk& disk = Disk::in_use());

/// The most that a kept copy may hold: the largest toy, and what was typed.
inline constexpr qint64 most_kept_bytes = (64 + 16) << 20;

}  // namespace roundwright::app
