#include "app/kept/kept_folder.h"

#include <algorithm>
#include <cerrno>
#include <ranges>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QUuid>

#include "app/kept/older_notes.h"
#include "app/storage/state_folder.h"

namespace roundwright::app {
namespace {

const auto kept_suffix = QStringLiteral(".kept");
const auto lock_suffix = QStringLiteral(".lock");
constexpr qint64 most_of_a_mark = 128;

}  // namespace

bool is_ours(const QString& file, Disk& disk) {
    struct ::stat found {};
    return disk.look_at_link(QFile::encodeName(file), found) == 0 && S_ISREG(found.st_mode) &&
           found.st_uid == ::geteuid() && found.st_nlink == 1;
}

KeptFolder::KeptFolder(const QString& state_folder, Disk& disk)
    : state_folder_(state_folder.isEmpty() ? usual_state_folder() : state_folder),
      path_(QDir(state_folder_).filePath(QStringLiteral("kept"))),
      disk_(disk) {}

std::optional<DiskFault> KeptFolder::make() const { return make_private_folder(path_, disk_); }

QString KeptFolder::kept_file(const QString& name, std::uint64_t number) const {
    return path_ + u'/' + name + u'.' + QString::number(number) + kept_suffix;
}

QString KeptFolder::lock_file(const QString& name) const { return path_ + u'/' + name + lock_suffix; }

QString KeptFolder::new_name() { return QUuid::createUuid().toString(QUuid::WithoutBraces); }

/// What lies behind a link in its place is somebody else's.
bool KeptFolder::is_in_place() const {
    struct ::stat found {};
    return disk_.look_at_link(QFile::encodeName(path_), found) == 0 && S_ISDIR(found.st_mode) &&
           found.st_uid == ::geteuid();
}

std::vector<QString> KeptFolder::names(const QString& suffix) const {
    std::vector<QString> found;
    if (!is_in_place()) return found;
    for (const auto& file : QDir(path_).entryList({u'*' + suffix}, QDir::Files | QDir::Hidden))
        found.push_back(file.chopped(suffix.size()));
    return found;
}

/// Of windows that have copies here. No name has a dot.
std::vector<QString> KeptFolder::windows() const {
    auto found = names(kept_suffix);
    for (QString& name : found) name = name.section(u'.', 0, 0);
    std::ranges::sort(found);
    const auto same = std::ranges::unique(found);
    found.erase(same.begin(), same.end());
    return found;
}

std::vector<KeptFile> KeptFolder::files_of(const QString& name) const {
    std::vector<KeptFile> found;
    const QString only{name + kept_suffix};
    const QStringList files =
        QDir(path_).entryList({name + QStringLiteral(".*") + kept_suffix, only}, QDir::Files | QDir::Hidden);
    for (const QString& file : files)
        found.push_back({path_ + u'/' + file, file == only ? 0 : file.section(u'.', 1, 1).toULongLong()});
    std::ranges::sort(found, {}, &KeptFile::number);
    return found;
}

std::optional<KeptCopy> KeptFolder::newest_of(const QString& name) const {
    for (const KeptFile& file : files_of(name) | std::views::reverse) {
        if (auto copy = read(file.path)) return copy;
    }
    return std::nullopt;
}

std::optional<DiskFault> KeptFolder::remove_all(const QString& name) const {
    const auto files = files_of(name);
    if (files.empty()) return std::nullopt;
    for (const KeptFile& file : files | std::views::take(files.size() - 1)) {
        if (disk_.remove(QFile::encodeName(file.path)) != 0 && errno != ENOENT)
            return DiskFault{DiskStep::remove, errno, file.path};
    }
    return remove_file(files.back().path, disk_);  // which syncs the folder for all of them
}

std::vector<QString> KeptFolder::running(const QString& but) const {
    auto found = names(lock_suffix);
    std::erase_if(found,
                  [&](const QString& name) { return name == but || !LockFile::is_held(lock_file(name)); });
    return found;
}

std::uint64_t KeptFolder::highest_number() const {
    std::uint64_t highest = 0;
    for (const auto& name : names(kept_suffix)) {
        const QString file = path_ + u'/' + name + kept_suffix;
        if (!is_ours(file, disk_)) continue;
        const auto beginning = read_whole(file, most_of_a_mark, Links::refuse, disk_).bytes;
        highest = std::max(highest, kept_number(beginning));
    }
    return highest;
}

std::optional<KeptCopy> KeptFolder::read(const QString& file) const {
    if (!is_ours(file, disk_)) return std::nullopt;
    const auto found = read_whole(file, most_kept_bytes, Links::refuse, disk_);
    return found.fault || found.bytes.size() > most_kept_bytes ? std::nullopt : read_kept(found.bytes);
}

std::optional<LeftBehind> KeptFolder::left_by(const QString& name) const {
    auto hold = std::make_shared<LockFile>();
    // Where no lock can be made nobody has one either: a full disk, or one that can only be read.
    if (hold->take(lock_file(name)) == LockAnswer::held_elsewhere) return std::nullopt;
    for (const KeptFile& file : files_of(name) | std::views::reverse) {
        if (auto copy = read(file.path))
            return LeftBehind{file.path, name, {}, std::move(copy->head), std::move(hold), {}};
    }
    return std::nullopt;
}

/// Locks of programs that are gone, and, if all are, what they were writing when they were killed (see
/// `write_whole`).
void KeptFolder::clear_up(const QString& window) const {
    for (const auto& name : names(lock_suffix)) {
        LockFile free;
        if (name == window || LockFile::is_held(lock_file(name))) continue;
        static_cast<void>(free.take(lock_file(name)));  // and when it is let go, it goes
    }
    if (!is_in_place() || !running(window).empty()) return;
    for (const auto& file : QDir(path_).entryList({QStringLiteral(".*.part")}, QDir::Files | QDir::Hidden))
        disk_.remove(QFile::encodeName(path_ + u'/' + file));
}

std::vector<LeftBehind> KeptFolder::left_behind() const {
    std::vector<LeftBehind> found;
    for (const auto& name : windows()) {
        if (auto left = left_by(name)) found.push_back(std::move(*left));
    }
    std::ranges::stable_sort(found, std::ranges::greater{},
                             [](const LeftBehind& left) { return left.head.number; });
    auto older = left_by_older_programs(state_folder_, disk_);
    found.insert(found.end(), std::move_iterator(older.begin()), std::move_iterator(older.end()));
    return found;
}

}  // namespace roundwright::app
