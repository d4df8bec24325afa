#include "app/versions/version_store.h"

#include <algorithm>
#include <cerrno>

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "app/storage/state_folder.h"
#include "core/base/limits.h"

namespace roundwright::app {
namespace {

constexpr int most_links = 40;  // as Linux has it: path_resolution(7)
constexpr auto most_bytes = static_cast<qint64>(max_file_bytes);

/// When what stands in a file was written, but not before the version it followed.
QDateTime when_written(const FileStamp& stamp, const std::optional<Version>& before, const QDateTime& now) {
    constexpr std::int64_t ns_per_ms = 1'000'000;
    const auto written = QDateTime::fromMSecsSinceEpoch(stamp.changed_ns / ns_per_ms, Qt::UTC);
    return std::min(before ? std::max(written, before->when) : written, now);
}

}  // namespace

QString canonical_toy_path(const QString& path) {
    QString file = QFileInfo(path).absoluteFilePath();
    for (int link = 0; link < most_links && QFileInfo(file).isSymLink(); ++link)
        file = QFileInfo(file).symLinkTarget();
    const QFileInfo info(file);
    const QString folder = QFileInfo(info.path()).canonicalFilePath();
    return folder.isEmpty() ? QDir::cleanPath(file) : QDir(folder).filePath(info.fileName());
}

VersionStore::VersionStore(const QString& state_folder, Disk& disk, const VersionLimits& limits)
    : state_folder_(state_folder.isEmpty() ? usual_state_folder() : state_folder),
      disk_(disk),
      limits_(limits) {}

QString VersionStore::all_folder() const { return state_folder_ + QStringLiteral("/versions"); }

VersionFolder VersionStore::folder_of(const QString& canonical) const {
    const auto name = QCryptographicHash::hash(QFile::encodeName(canonical), QCryptographicHash::Sha256);
    return {all_folder() + QLatin1Char('/') + QString::fromLatin1(name.toHex()), disk_};
}

/// Each folder on the way is made sure of, since only the last name of a path is looked at for links.
std::optional<DiskFault> VersionStore::make_folder(const VersionFolder& folder) const {
    for (const QString& path : {state_folder_, all_folder(), folder.path()}) {
        if (auto fault = make_private_folder(path, disk_)) return fault;
    }
    return std::nullopt;
}

KeptVersion VersionStore::keep(const QString& path, const QByteArray& bytes, VersionKind kind,
                               const QDateTime& when) const {
    return {add(path, bytes, kind, when)};
}

std::optional<DiskFault> VersionStore::add(const QString& path, const QByteArray& bytes, VersionKind kind,
                                           const QDateTime& when) const {
    const QString canonical = canonical_toy_path(path);
    const VersionFolder folder = folder_of(canonical);
    if (auto fault = make_folder(folder)) return fault;
    if (auto fault = folder.note_path(canonical)) return fault;
    const auto all = folder.versions();
    const auto in_file = folder.newest_in_file();
    const QByteArray sha256 = content_sha256(bytes);
    const bool is_newest = !all.empty() && all.front().sha256 == sha256 && all.front().kind == kind;
    if (is_newest || (in_file && in_file->sha256 == sha256)) return std::nullopt;
    auto added = folder.add(bytes, kind, when);
    if (added.fault) return std::move(added.fault);
    if (!added.is_safe) return std::nullopt;
    folder.thin(limits_, QDateTime::currentDateTimeUtc());
    thin_all(folder);
    return std::nullopt;
}

KeptVersion VersionStore::keep_what_stands_in(const QString& path) const {
    struct ::stat found {};
    if (disk_.look(QFile::encodeName(path), found) != 0 || !S_ISREG(found.st_mode)) return {};
    if (found.st_size > most_bytes) return {};
    const auto read = read_whole(path, most_bytes, Links::follow, disk_);
    if (read.fault || read.bytes.size() > most_bytes) return {read.fault};
    const VersionFolder folder = folder_of(canonical_toy_path(path));
    take_over(folder, content_sha256(read.bytes));
    const auto now = QDateTime::currentDateTimeUtc();
    return keep(path, read.bytes, VersionKind::found, when_written(read.stamp, folder.newest_in_file(), now));
}

std::vector<VersionFolder> VersionStore::folders() const {
    constexpr auto own_folders = QDir::Dirs | QDir::NoDotAndDotDot | QDir::NoSymLinks;
    std::vector<VersionFolder> found;
    for (const QFileInfo& folder : QDir(all_folder()).entryInfoList(own_folders))
        found.emplace_back(folder.filePath(), disk_);
    return found;
}

/// Whether the toy is no longer where the folder's name says that it was.
bool VersionStore::is_gone(const VersionFolder& folder) const {
    const QString toy = folder.noted_path();
    if (toy.isEmpty() || folder_of(toy).path() != folder.path()) return false;
    struct ::stat found {};
    return disk_.look_at_link(QFile::encodeName(toy), found) != 0 && (errno == ENOENT || errno == ENOTDIR);
}

void VersionStore::take_over(const VersionFolder& own, const QByteArray& sha256) const {
    if (!own.versions().empty()) return;
    for (const VersionFolder& other : folders()) {
        const auto newest = other.newest_in_file();
        if (!newest || newest->sha256 != sha256 || !is_gone(other)) continue;
        (void)own.clear();  // what is there holds no version, and rename wants an empty folder
        if (disk_.rename(QFile::encodeName(other.path()), QFile::encodeName(own.path())) == 0) return;
    }
}

/// The oldest of all go first, and what is the last of its toy only when nothing else is left; not even then,
/// if the toy's file is gone.
void VersionStore::thin_all(const VersionFolder& spared) const {
    struct Candidate {
        Version version;
        bool is_last = false;
    };
    std::vector<Candidate> candidates;
    qint64 bytes = 0;
    for (const VersionFolder& folder : folders()) {
        const auto all = folder.versions();
        for (std::size_t i = 0; i < all.size(); ++i) {
            bytes += all[i].bytes;
            if (i == 0 && folder.path() == spared.path()) continue;
            candidates.push_back({all[i], i == 0});
        }
    }
    if (bytes <= limits_.bytes_in_all) return;
    std::ranges::sort(candidates, {}, [](const Candidate& candidate) {
        return std::pair(candidate.is_last, candidate.version.when);
    });
    for (const Candidate& candidate : candidates) {
        if (bytes <= limits_.bytes_in_all) return;
        const VersionFolder folder(QFileInfo(candidate.version.file).path(), disk_);
        if (!candidate.is_last) folder.remove(candidate.version);
        if (candidate.is_last && (is_gone(folder) || folder.clear())) continue;
        bytes -= candidate.version.bytes;
    }
}

std::vector<Version> VersionStore::versions_of(const QString& path) const {
    return folder_of(canonical_toy_path(path)).versions();
}

ReadFile VersionStore::read(const Version& version) const {
    return read_whole(version.file, most_bytes, Links::refuse, disk_);
}

std::optional<DiskFault> VersionStore::forget(const QString& path) const {
    return folder_of(canonical_toy_path(path)).clear();
}

std::optional<DiskFault> keep_version(const QString& path, const QByteArray& bytes, VersionKind kind) {
    return VersionStore().keep(path, bytes, kind).fault;
}

}  // namespace roundwright::app
