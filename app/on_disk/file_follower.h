#pragma once

#include <optional>

#include <QObject>
#include <QString>
#include <QTimer>

#include "app/on_disk/file_claim.h"
#include "app/on_disk/file_watch.h"
#include "app/session/document_session.h"
#include "app/versions/version_store.h"
#include "render/background/background.h"

namespace roundwright::app {

/// Follows what happens to the open file on disk and tells the session: written, replaced, damaged, renamed,
/// taken away or brought back by another program; opened or left by another window. Does what the maker then
/// chooses. Files are read in the background, and one that is being written is waited for.
class FileFollower : public QObject {
    Q_OBJECT
  public:
    /// `state_folder` empty: the usual one.
    explicit FileFollower(DocumentSession& session, const QString& state_folder = {},
                          QObject* parent = nullptr);

    /// Looks now, and answers later if anything is to be read.
    void look();
    /// Looks, and knows when it returns.
    void look_now();
    /// The same file as the open one, by whatever name.
    [[nodiscard]] bool is_open_here(const QString& path) const;
    /// Another window has this file.
    [[nodiscard]] bool is_open_elsewhere(const QString& path) const;
    /// The file was open in another window, and is no longer.
    [[nodiscard]] bool is_free_again() const { return free_again_; }
    /// Why what stands in the file is no toy; empty: it is one, or nobody has looked.
    [[nodiscard]] const QString& why_unreadable() const { return why_unreadable_; }

    // What the maker chooses. Problems leave everything as it is.
    /// The file's toy, as one step that can be undone. What was not saved stays as an earlier version too.
    [[nodiscard]] std::optional<FileProblem> take_theirs();
    /// Saved over theirs, which stays as an earlier version.
    [[nodiscard]] std::optional<FileProblem> keep_mine();
    /// Saved beside it under a name that is free, under which it is open from then on.
    [[nodiscard]] std::optional<FileProblem> keep_both();
    /// Takes over from another window that has closed it, with what that one saved last. False: another one
    /// was faster.
    bool change_here();
    /// Claims a name before it is saved under. False: another window has it.
    [[nodiscard]] bool claim(const QString& path);
    /// Write-protected, or in a folder that is.
    [[nodiscard]] static bool is_protected(const QString& path);

  Q_SIGNALS:
    /// What is to be said of the file may be another thing.
    void changed();
    /// The file was renamed, and is followed.
    void renamed(const QString& before, const QString& now);

  private:
    struct Seen {
        QString path;
        LoadedFile file;
        std::optional<DiskFault> fault;
    };

    void follow_session();
    void follow_path();
    void follow_standing();
    void follow_right();
    void ask_again();
    [[nodiscard]] bool is_as_known();
    [[nodiscard]] bool is_seen_already(const FileStamp& now) const;
    [[nodiscard]] static Seen see(const QString& path);
    void take_in(Seen seen);
    void take_in_fault(const Seen& seen);
    void take_in_unreadable(const Seen& seen);
    void is_gone();
    [[nodiscard]] QString name_after_rename() const;
    void look_soon(int after_ms);
    void keep_theirs_as_version() const;
    void keep_mine_as_version() const;

    DocumentSession& session_;
    const QString state_folder_;
    FileClaim claim_;
    FileClaim next_claim_;  ///< of the name that is being saved under
    FileWatch watch_;
    render::Background background_;
    QTimer soon_;
    QTimer again_;  ///< while something is hoped for that nobody tells
    QString followed_;
    bool elsewhere_ = false;
    bool free_again_ = false;
    bool waits_ = true;  ///< for a file that is being replaced or written
    int misses_ = 0;
    FileStamp doubtful_;
    std::optional<LoadedFile> theirs_;
    QString why_unreadable_;
};

/// "pup (2).roundwright" for "pup.roundwright", "pup (3).roundwright" for that.
[[nodiscard]] QString next_free_name(const QString& path);

}  // namespace roundwright::app
