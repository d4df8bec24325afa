#include "app/versions/version_folder.h"

#include <algorithm>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>

#include "core/base/limits.h"

namespace roundwright::app {
namespace {

constexpr qint64 most_note_bytes = 1 << 16;
constexpr qint64 most_cut_off_s = 3600;  // longer than any write takes
const auto note_name = QStringLiteral("toy.json");
const auto path_key = QStringLiteral("path");
const auto cut_off_names = QStringLiteral(".*.part");

// A link is no version of ours.
constexpr auto own_files = QDir::Files | QDir::Hidden | QDir::NoSymLinks;

}  // namespace

std::vector<Version> VersionFolder::versions() const {
    std::vector<Version> found;
    for (const QFileInfo& file : QDir(path_).entryInfoList(own_files)) {
        auto version = version_named(file.fileName());
        if (!version) continue;
        version->file = file.filePath();
        version->bytes = file.size();
        found.push_back(*version);
    }
    std::ranges::sort(found, std::ranges::greater{},
                      [](const Version& version) { return std::pair(version.number, version.when); });
    return found;
}

std::optional<Version> VersionFolder::newest_in_file() const {
    const auto all = versions();
    const auto found = std::ranges::find_if(all, stood_in_file);
    return found == all.end() ? std::nullopt : std::optional(*found);
}

QString VersionFolder::noted_path() const {
    const auto note = read_whole(path_ + QLatin1Char('/') + note_name, most_note_bytes, Links::refuse, disk_);
    if (note.fault) return {};
    return QJsonDocument::fromJson(note.bytes).object().value(path_key).toString();
}

std::optional<DiskFault> VersionFolder::note_path(const QString& toy) const {
    if (noted_path() == toy) return std::nullopt;
    const auto note = QJsonDocument(QJsonObject{{path_key, toy}}).toJson();
    return write_whole(path_ + QLatin1Char('/') + note_name, note, {Links::refuse, true}, disk_).fault;
}

VersionFolder::Added VersionFolder::add(const QByteArray& bytes, VersionKind kind,
                                        const QDateTime& when) const {
    const auto before = versions();
    Version version{before.empty() ? 1 : before.front().number + 1, when, kind, content_sha256(bytes), {}, 0};
    version.file = path_ + QLatin1Char('/') + version_file_name(version);
    auto written = write_whole(version.file, bytes, {Links::refuse, true}, disk_);
    if (written.fault) return {std::move(written.fault)};
    if (written.not_yet_safe) return {};
    drop_same_before(version);
    return {std::nullopt, true};
}

/// What was given up and is saved after all needs to be kept once.
void VersionFolder::drop_same_before(const Version& newest) const {
    const auto all = versions();
    const auto same = [&](const Version& version) {
        return version.number < newest.number && version.sha256 == newest.sha256;
    };
    if (all.size() > 1 && same(all[1])) remove(all[1]);
}

void VersionFolder::remove(const Version& version) const {
    // What cannot be removed now is too much the next time as well.
    (void)remove_file(version.file, disk_);
}

void VersionFolder::thin(const VersionLimits& limits, const QDateTime& now) const {
    sweep(now);
    const auto all = versions();
    std::vector<AgedVersion> aged;
    for (const Version& version : all) aged.push_back({version.when.secsTo(now), version.bytes});
    for (const std::size_t index : superfluous_versions(aged, limits)) remove(all[index]);
}

void VersionFolder::sweep(const QDateTime& now) const {
    for (const QFileInfo& file : QDir(path_).entryInfoList({cut_off_names}, own_files)) {
        if (file.lastModified().secsTo(now) > most_cut_off_s) (void)remove_file(file.filePath(), disk_);
    }
}

std::optional<DiskFault> VersionFolder::clear() const {
    std::optional<DiskFault> first;
    const auto remove_one = [&](const QString& file) {
        if (auto fault = remove_file(file, disk_); fault && !first) first = fault;
    };
    for (const Version& version : versions()) remove_one(version.file);
    for (const QFileInfo& file : QDir(path_).entryInfoList({cut_off_names}, own_files))
        remove_one(file.filePath());
    // The note goes last: until then it is known whose versions are left.
    if (!first) remove_one(path_ + QLatin1Char('/') + note_name);
    if (!first) disk_.remove_folder(QFile::encodeName(path_));
    return first;
}

}  // namespace roundwright::app
