#include "app/kept/older_notes.h"

#include <algorithm>

#include <QDir>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLockFile>

#include "app/kept/kept_folder.h"

namespace roundwright::app {
namespace {

constexpr qint64 most_note_bytes = 8 << 20;
const auto note_suffix = QStringLiteral(".note");

std::optional<LeftBehind> read_note(const QString& file, Disk& disk) {
    if (!is_ours(file, disk)) return std::nullopt;
    const auto found = read_whole(file, most_note_bytes, Links::refuse, disk);
    const auto note = QJsonDocument::fromJson(found.bytes).object();
    LeftBehind left;
    left.file = file;
    left.toy_file = note.value(QStringLiteral("copy")).toString();
    left.head.document = note.value(QStringLiteral("document")).toString();
    left.head.typed = {note.value(QStringLiteral("typed")).toString(),
                       note.value(QStringLiteral("typed_for_piece")).toInt()};
    left.head.kept = QFileInfo(left.toy_file).lastModified();
    if (left.toy_file.isEmpty() || !is_ours(left.toy_file, disk)) return std::nullopt;
    return left;
}

/// As those programs locked: by a file with the number of their process in it.
std::shared_ptr<QLockFile> hold_of(const QString& note) {
    auto hold = std::make_shared<QLockFile>(note.chopped(note_suffix.size()) + QStringLiteral(".lock"));
    hold->setStaleLockTime(0);
    return hold->tryLock(0) ? hold : nullptr;
}

}  // namespace

std::vector<LeftBehind> left_by_older_programs(const QString& state_folder, Disk& disk) {
    std::vector<LeftBehind> found;
    const QDir folder(state_folder);
    for (const auto& name : folder.entryList({u'*' + note_suffix}, QDir::Files | QDir::Hidden)) {
        auto left = read_note(folder.filePath(name), disk);
        if (!left || !(left->old_hold = hold_of(left->file))) continue;
        found.push_back(std::move(*left));
    }
    std::ranges::stable_sort(found, std::ranges::greater{},
                             [](const LeftBehind& left) { return left.head.kept; });
    return found;
}

}  // namespace roundwright::app
