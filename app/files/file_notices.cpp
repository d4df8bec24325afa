#include "app/files/file_notices.h"

#include <utility>

#include <QEvent>
#include <QFileInfo>

#include "app/files/document_files.h"

namespace roundwright::app {
namespace {

const auto disk_cause = QStringLiteral("file-on-disk");
const auto right_cause = QStringLiteral("right-to-write");

}  // namespace

FileNotices::FileNotices(DocumentSession& session, FileFollower& follower, DocumentFiles& files,
                         NoticeBar& bar, QWidget* window)
    : QObject(window), session_(session), follower_(follower), files_(files), bar_(bar) {
    window->installEventFilter(this);
    connect(&session_, &DocumentSession::standing_changed, this, &FileNotices::follow);
    connect(&session_, &DocumentSession::file_changed, this, &FileNotices::follow);
    connect(&follower_, &FileFollower::changed, this, &FileNotices::follow);
    connect(&follower_, &FileFollower::renamed, this, [this](const QString& before, const QString& now) {
        Q_EMIT told(tr("“%1” is called “%2” now.")
                        .arg(QFileInfo(before).completeBaseName(), QFileInfo(now).completeBaseName()));
    });
    follow();
}

/// Some disks tell nothing of what others do there.
bool FileNotices::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::WindowActivate) follower_.look();
    return QObject::eventFilter(watched, event);
}

QString FileNotices::name() const { return QFileInfo(session_.path()).completeBaseName(); }

void FileNotices::follow() {
    if (std::exchange(path_, session_.path()) != session_.path()) put_away_.clear();
    put(disk_cause, of_disk());
    put(right_cause, of_right());
}

void FileNotices::put(const QString& cause, const std::optional<Notice>& notice) {
    if (notice && notice->words != put_away_)
        bar_.put_up(cause, *notice);
    else
        bar_.take_down(cause);
}

std::optional<Notice> FileNotices::of_disk() const {
    const FileStanding& standing = session_.standing();
    switch (standing.on_disk) {
        case OnDisk::changed:
            return standing.open_elsewhere ? changed_elsewhere() : changed();
        case OnDisk::unreadable:
            return unreadable();
        case OnDisk::gone:
            return gone();
        case OnDisk::never_saved:
        case OnDisk::same:
            break;
    }
    return std::nullopt;
}

std::optional<Notice> FileNotices::of_right() const {
    switch (read_only(session_.standing())) {
        case ReadOnly::newer_format:
            return Notice{NoticeRank::remark,
                          tr("“%1” was written by a newer Roundwright. Look at it here, or save a copy and "
                             "change that.")
                              .arg(name()),
                          {save_under_another_name(tr("Save a &copy…")), look_only()}};
        case ReadOnly::open_elsewhere:
            return follower_.is_free_again() ? free_again() : open_elsewhere();
        case ReadOnly::no_right:
            return Notice{NoticeRank::remark,
                          tr("“%1” is write-protected. To keep what you change here, save it under another "
                             "name or in another folder.")
                              .arg(name()),
                          {save_under_another_name(tr("Save under another &name…"))}};
        case ReadOnly::no:
            break;
    }
    return std::nullopt;
}

// --- what is said

Notice FileNotices::open_elsewhere() const {
    return {NoticeRank::caution,
            tr("“%1” is open in another window. You can look at it here and change it there.").arg(name()),
            {look_only(), save_under_another_name(tr("Save a &copy…"))}};
}

Notice FileNotices::free_again() const {
    return {NoticeRank::caution,
            tr("“%1” is no longer open in the other window.").arg(name()),
            {{tr("Cha&nge it here"), [this] { follower_.change_here(); }}, look_only()}};
}

Notice FileNotices::changed_elsewhere() const {
    return {NoticeRank::caution,
            tr("“%1” was saved elsewhere since it was read here.").arg(name()),
            {{tr("Show it as it is &now"), [this] { files_.reload(); }}}};
}

Notice FileNotices::changed() const {
    if (!session_.modified())
        return {NoticeRank::caution,
                tr("“%1” was changed by another program.").arg(name()),
                {take_theirs(), keep_mine()}};
    return {
        NoticeRank::danger,
        tr("“%1” was changed by another program, and you have changes here that are not saved.").arg(name()),
        {take_theirs(), keep_mine(), keep_both()}};
}

Notice FileNotices::unreadable() const {
    Notice notice{NoticeRank::danger,
                  tr("“%1” can no longer be read. %2 The toy here is safe, but no file has it.")
                      .arg(name(), follower_.why_unreadable()),
                  {keep_both(), keep_mine()}};
    if (session_.standing().open_elsewhere) notice.answers.clear();
    return notice;
}

Notice FileNotices::gone() const {
    Notice notice{
        NoticeRank::danger,
        tr("“%1” is no longer in its folder. The toy here is safe, but no file has it.").arg(name()),
        {{tr("Save it a&gain"), [this] { files_.save(); }},
         save_under_another_name(tr("Save under another &name…"))}};
    if (session_.standing().open_elsewhere) notice.answers.erase(notice.answers.begin());
    return notice;
}

// --- what can be done

NoticeAnswer FileNotices::save_under_another_name(const QString& words) const {
    return {words, [this] { files_.save_as(); }};
}

NoticeAnswer FileNotices::look_only() const {
    return {tr("&Look only"), [this] {
                put_away_ = bar_.words(right_cause);
                bar_.take_down(right_cause);
            }};
}

NoticeAnswer FileNotices::take_theirs() const {
    return {tr("Take &theirs"), [this] { files_.reload(); },
            tr("Shows what is in the file now. Undo brings yours back.")};
}

NoticeAnswer FileNotices::keep_mine() const {
    return {tr("Keep &mine"), [this] { files_.keep(Keep::mine); },
            tr("Saves yours over theirs, which stays under Earlier versions.")};
}

NoticeAnswer FileNotices::keep_both() const {
    return {tr("Keep &both"), [this] { files_.keep(Keep::both); },
            tr("Saves yours beside it as “%1”.")
                .arg(QFileInfo(next_free_name(session_.path())).completeBaseName())};
}

}  // namespace roundwright::app
