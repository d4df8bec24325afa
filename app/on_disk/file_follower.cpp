#include "app/on_disk/file_follower.h"

#include <cerrno>
#include <memory>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "app/storage/disk_words.h"
#include "app/storage/state_folder.h"
#include "core/base/limits.h"

namespace roundwright::app {
namespace {

constexpr int again_ms = 1000;
constexpr int replaced_ms = 150;  // between the removal of a file and what takes its place
constexpr int written_ms = 700;   // in which a file that is being written has grown
constexpr int most_misses = 3;
constexpr int most_free_names = 1000;
constexpr int most_names_looked_at = 5000;
constexpr qsizetype most_name_bytes = 255;  // of the usual file systems

std::optional<FileStamp> stamp_now(const QString& path) {
    struct ::stat found {};
    if (::stat(QFile::encodeName(path).constData(), &found) != 0) return std::nullopt;
    return stamp_of(found);
}

bool is_missing(int error) { return error == ENOENT || error == ENOTDIR; }

bool same_file(const FileStamp& one, const FileStamp& other) {
    return one.inode != 0 && one.device == other.device && one.inode == other.inode;
}

}  // namespace

FileFollower::FileFollower(DocumentSession& session, const QString& state_folder, QObject* parent)
    : QObject(parent),
      session_(session),
      state_folder_(state_folder.isEmpty() ? usual_state_folder() : state_folder),
      claim_(state_folder_ + QStringLiteral("/open")),
      next_claim_(state_folder_ + QStringLiteral("/open")) {
    soon_.setSingleShot(true);
    again_.setInterval(again_ms);
    connect(&soon_, &QTimer::timeout, this, &FileFollower::look);
    connect(&again_, &QTimer::timeout, this, &FileFollower::ask_again);
    connect(&watch_, &FileWatch::stirred, this, &FileFollower::look);
    connect(&session_, &DocumentSession::file_changed, this, &FileFollower::follow_session);
    connect(&session_, &DocumentSession::standing_changed, this, &FileFollower::follow_standing);
    follow_session();
}

// --- which file

void FileFollower::follow_session() {
    if (session_.path() != followed_) follow_path();
    if (followed_.isEmpty()) return;
    session_.happened(elsewhere_ ? FileEvent::opened_elsewhere : FileEvent::closed_elsewhere);
    follow_right();
    Q_EMIT changed();
}

void FileFollower::follow_path() {
    followed_ = session_.path();
    background_.cancel();
    soon_.stop();
    theirs_.reset();
    why_unreadable_.clear();
    doubtful_ = {};
    misses_ = 0;
    free_again_ = false;
    elsewhere_ = false;
    watch_.follow(followed_);
    if (next_claim_.is_mine(followed_)) claim_ = std::exchange(next_claim_, FileClaim(claim_.folder()));
    next_claim_.give_back();
    if (followed_.isEmpty()) return claim_.give_back();
    elsewhere_ = !claim_.take(followed_, session_.stamp());
    look_soon(0);  // what was brought back may have another file by now
}

void FileFollower::follow_standing() {
    const OnDisk found = session_.standing().on_disk;
    if (found != OnDisk::changed) theirs_.reset();
    if (found != OnDisk::unreadable) why_unreadable_.clear();
    if (!elsewhere_) claim_.follow(session_.stamp());
    const bool hopes = elsewhere_ || found == OnDisk::gone || found == OnDisk::unreadable;
    if (hopes != again_.isActive()) hopes ? again_.start() : again_.stop();
    Q_EMIT changed();
}

bool FileFollower::is_protected(const QString& path) {
    const QByteArray name = QFile::encodeName(canonical_toy_path(path));
    const QByteArray folder = QFile::encodeName(QFileInfo(canonical_toy_path(path)).path());
    if (::access(folder.constData(), F_OK) != 0) return false;
    if (::access(folder.constData(), W_OK) != 0) return true;
    struct ::stat found {};
    if (::stat(name.constData(), &found) != 0 || !S_ISREG(found.st_mode)) return false;
    // Write-protected by its rights, also for those who may write everything.
    constexpr mode_t writable = S_IWUSR | S_IWGRP | S_IWOTH;
    return (found.st_mode & writable) == 0 || ::access(name.constData(), W_OK) != 0;
}

void FileFollower::follow_right() {
    session_.happened(is_protected(followed_) ? FileEvent::right_taken : FileEvent::right_given);
}

void FileFollower::ask_again() {
    if (elsewhere_) {
        const bool is_free = !claim_.is_taken_elsewhere(followed_, session_.stamp());
        if (std::exchange(free_again_, is_free) != is_free) Q_EMIT changed();
    }
    look();
}

bool FileFollower::is_open_here(const QString& path) const {
    if (session_.path().isEmpty() || session_.standing().on_disk == OnDisk::gone) return false;
    if (canonical_toy_path(path) == canonical_toy_path(session_.path())) return true;
    const auto one = stamp_now(path);
    const auto other = stamp_now(session_.path());
    return one && other && same_file(*one, *other);
}

bool FileFollower::is_open_elsewhere(const QString& path) const {
    return !claim_.is_mine(path) && claim_.is_taken_elsewhere(path, stamp_now(path).value_or(FileStamp{}));
}

bool FileFollower::claim(const QString& path) {
    if (claim_.is_mine(path)) return true;
    // Another name of the open file is held by this very window.
    const auto stamp = is_open_here(path) ? std::nullopt : stamp_now(path);
    return next_claim_.take(path, stamp.value_or(FileStamp{}));
}

// --- what happens to it

void FileFollower::look_soon(int after_ms) { soon_.start(after_ms); }

bool FileFollower::is_as_known() {
    const auto now = stamp_now(followed_);
    if (!now || !same_state(*now, session_.stamp())) return false;
    background_.cancel();
    misses_ = 0;
    session_.know_file_again(session_.stamp());
    return true;
}

/// What stands there now has been read and told.
bool FileFollower::is_seen_already(const FileStamp& now) const {
    if (theirs_) return same_state(now, theirs_->stamp);
    return session_.standing().on_disk == OnDisk::unreadable && same_state(now, doubtful_);
}

void FileFollower::look() {
    if (followed_.isEmpty()) return;
    watch_.renew();
    follow_right();
    if (is_as_known()) return;
    if (const auto now = stamp_now(followed_); now && is_seen_already(*now)) return;
    background_.start_latest(render::Lane::longer, [this, path = followed_](const render::TaskRun&) {
        auto seen = std::make_shared<Seen>(see(path));
        return render::Delivery([this, seen] { take_in(std::move(*seen)); });
    });
}

void FileFollower::look_now() {
    if (followed_.isEmpty()) return;
    background_.cancel();
    waits_ = false;
    if (!is_as_known()) take_in(see(followed_));
    waits_ = true;
}

FileFollower::Seen FileFollower::see(const QString& path) {
    const ReadFile read = read_whole(path, static_cast<qint64>(max_file_bytes));
    Seen seen{path, load_document(read), read.fault};
    seen.file.stamp = read.stamp;
    return seen;
}

void FileFollower::take_in(Seen seen) {
    if (seen.path != followed_) return;
    if (seen.fault) return take_in_fault(seen);
    misses_ = 0;
    const auto now = stamp_now(followed_);
    if (waits_ && !(now && same_state(*now, seen.file.stamp))) return look_soon(replaced_ms);
    const QByteArray& known = session_.stamp().sha256;
    if (known.isEmpty() || known == seen.file.stamp.sha256) return session_.know_file_again(seen.file.stamp);
    if (seen.file.problem) return take_in_unreadable(seen);
    theirs_ = std::move(seen.file);
    session_.happened(FileEvent::changed_by_another);
    Q_EMIT changed();
}

void FileFollower::take_in_fault(const Seen& seen) {
    if (waits_ && ++misses_ < most_misses) return look_soon(replaced_ms);
    if (is_missing(seen.fault->error)) return is_gone();
    why_unreadable_ = disk_fault_words(*seen.fault);
    session_.happened(FileEvent::made_unreadable);
    Q_EMIT changed();
}

/// It may be half written: it is looked at once more when it has been left alone for a while.
void FileFollower::take_in_unreadable(const Seen& seen) {
    const bool is_settled = same_state(doubtful_, seen.file.stamp);
    doubtful_ = seen.file.stamp;
    if (waits_ && !is_settled) return look_soon(written_ms);
    session_.happened(FileEvent::made_unreadable);
    why_unreadable_ = seen.file.problem->message;
    Q_EMIT changed();
}

void FileFollower::is_gone() {
    const QString name = name_after_rename();
    if (name.isEmpty()) return session_.happened(FileEvent::gone);
    const QString before = followed_;
    session_.follow_to(name);
    look();
    Q_EMIT renamed(before, name);
}

/// Where in its folder the file is that was known: the same one on the disk, not written since.
QString FileFollower::name_after_rename() const {
    const QDir folder(QFileInfo(followed_).path());
    const auto names = folder.entryList({QStringLiteral("*.roundwright")}, QDir::Files, QDir::Unsorted);
    for (const QString& name : names.mid(0, most_names_looked_at)) {
        const auto now = stamp_now(folder.filePath(name));
        if (now && same_file(*now, session_.stamp()) && now->changed_ns == session_.stamp().changed_ns)
            return folder.filePath(name);
    }
    return {};
}

// --- what the maker chooses

std::optional<FileProblem> FileFollower::take_theirs() {
    Seen seen = see(followed_);
    if (seen.file.problem) {
        look_now();
        return seen.file.problem;
    }
    background_.cancel();
    keep_mine_as_version();
    session_.take_theirs(std::move(seen.file));
    return std::nullopt;
}

/// One step back in this window, and nowhere else if the program ends now.
void FileFollower::keep_mine_as_version() const {
    if (!session_.modified()) return;
    const auto mine = QByteArray::fromStdString(write_document(session_.said_toy()));
    static_cast<void>(VersionStore(state_folder_).keep(followed_, mine, VersionKind::not_saved));
}

/// A version that cannot be kept stops nobody from saving.
void FileFollower::keep_theirs_as_version() const {
    static_cast<void>(VersionStore(state_folder_).keep_what_stands_in(followed_));
}

std::optional<FileProblem> FileFollower::keep_mine() {
    keep_theirs_as_version();
    return session_.save(followed_, SaveOver::anything);
}

std::optional<FileProblem> FileFollower::keep_both() {
    QString name = followed_;
    for (int attempt = 0; attempt < most_free_names; ++attempt) {
        name = next_free_name(name);
        if (QFileInfo(name).isSymLink() || QFileInfo::exists(name)) continue;
        const auto problem = session_.save(name, SaveOver::nothing);
        if (!problem || !problem->was_changed) return problem;
    }
    return FileProblem{tr("There are too many files of this name already."), {}};
}

bool FileFollower::change_here() {
    if (!claim_.take(followed_, session_.stamp())) return false;
    elsewhere_ = false;
    free_again_ = false;
    look_now();
    if (session_.standing().on_disk == OnDisk::changed && !session_.modified() && take_theirs()) return false;
    session_.happened(FileEvent::closed_elsewhere);
    return true;
}

QString next_free_name(const QString& path) {
    const QFileInfo file(path);
    const qsizetype dot = file.fileName().lastIndexOf(u'.');
    QString base = dot > 0 ? file.fileName().left(dot) : file.fileName();
    const QString ending = dot > 0 ? file.fileName().mid(dot) : QString();
    int number = 1;
    const qsizetype bracket = base.lastIndexOf(QStringLiteral(" ("));
    if (bracket > 0 && base.endsWith(u')')) {
        bool is_number = false;
        const int found = base.mid(bracket + 2, base.size() - bracket - 3).toInt(&is_number);
        if (is_number && found > 1) {
            number = found;
            base.truncate(bracket);
        }
    }
    const QString more = QStringLiteral(" (%1)").arg(number + 1) + ending;
    while (!base.isEmpty() && QFile::encodeName(base + more).size() > most_name_bytes)
        base.chop(base.back().isLowSurrogate() ? 2 : 1);
    return QDir(file.path()).filePath(base + more);
}

}  // namespace roundwright::app
