#include "app/kept/kept_folder.h"

#include <algorithm>
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

QString KeptFolder::kept_file(const QString& name) const { return path_ + u'/' + name + kept_suffix; }

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

std::vector<QString> KeptFolder::running(const QString& but) const {
    auto found = names(lock_suffix);
    std::erase_if(found,
                  [&](const QString& name) { return name == but || !LockFile::is_held(lock_file(name)); });
    return found;
}

std::uint64_t KeptFolder::highest_number() const {
    std::uint64_t highest = 0;
    for (const auto& name : names(kept_suffix)) {
        if (!is_ours(kept_file(name), disk_)) continue;
        const auto beginning = read_whole(kept_file(name), most_of_a_mark, Links::refuse, disk_).bytes;
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
    auto copy = read(kept_file(name));
    if (!copy) return std::nullopt;
    return LeftBehind{kept_file(name), {}, std::move(copy->head), std::move(hold), {}};
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
    for (const auto& name : names(kept_suffix)) {
        if (auto left = left_by(name)) found.push_back(std::move(*left));
    }
    std::ranges::stable_sort(found, std::ranges::greater{},
                             [](const LeftBehind& left) { return left.head.number; });
    auto older = left_by_older_programs(state_folder_, disk_);
    found.insert(found.end(), std::move_iterator(older.begin()), std::move_iterator(older.end()));
    return found;
}

}  // namespace roundwright::app
