#include "app/own_pieces/own_pieces_folder.h"

#include <cerrno>

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QStandardPaths>

#include "app/kit/toy_files.h"
#include "app/storage/disk.h"
#include "app/storage/disk_words.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

struct OwnPiecesText {
    Q_DECLARE_TR_FUNCTIONS(OwnPieces)
};

constexpr int most_of_one_name = 1000;
constexpr int longest_name = 60;

/// Letters, digits, spaces and hyphens: what every file system takes.
QString file_name_of(const Toy& piece) {
    QString name;
    for (const QChar letter : name_in_words(piece.title).left(longest_name))
        name += letter.isLetterOrNumber() || letter == u'-' ? letter : u' ';
    name = name.simplified();
    return name.isEmpty() ? OwnPiecesText::tr("Piece") : name;
}

QString numbered_path(const QString& folder, const QString& name, int number) {
    const QString numbered = number == 1 ? name : QStringLiteral("%1 %2").arg(name).arg(number);
    return QStringLiteral("%1/%2.%3").arg(folder, numbered, toy_ending());
}

FileProblem problem_at(const DiskFault& fault) { return {disk_fault_words(fault), {}}; }

/// Under its own name, and a number where that is taken; nothing is overwritten.
OwnPiecesFolder::Moved move_into(const QString& folder, const QString& file) {
    if (const auto fault = make_private_folder(folder)) return {file, problem_at(*fault)};
    const QString name = QFileInfo(file).completeBaseName();
    for (int number = 1; number <= most_of_one_name; ++number) {
        const QString path = numbered_path(folder, name, number);
        if (Disk::in_use().rename_to_free(QFile::encodeName(file), QFile::encodeName(path)) == 0)
            return {path, std::nullopt};
        if (errno != EEXIST) break;
    }
    return {file, problem_at({DiskStep::rename, errno, file})};
}

}  // namespace

OwnPiecesFolder OwnPiecesFolder::usual() {
    return OwnPiecesFolder(QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) +
                           QStringLiteral("/roundwright/own-pieces"));
}

std::vector<QString> OwnPiecesFolder::files() const {
    std::vector<QString> paths;
    const QDir folder(path_);
    for (const QFileInfo& file : folder.entryInfoList({QStringLiteral("*.%1").arg(toy_ending())}, QDir::Files,
                                                      QDir::Name | QDir::IgnoreCase | QDir::LocaleAware))
        paths.push_back(file.absoluteFilePath());
    return paths;
}

std::optional<FileProblem> OwnPiecesFolder::keep(const Toy& piece) const { return save_new(piece).problem; }

OwnPiecesFolder::Moved OwnPiecesFolder::save_new(const Toy& piece) const {
    if (const auto fault = make_private_folder(path_)) return {{}, FileProblem{disk_fault_words(*fault), {}}};
    Moved saved;
    for (int number = 1; number <= most_of_one_name; ++number) {
        saved.path = numbered_path(path_, file_name_of(piece), number);
        if (QFileInfo::exists(saved.path)) continue;
        WriteWishes wishes;
        wishes.only_new = true;
        saved.problem = save_document_file(saved.path, piece, wishes).problem;
        if (!saved.problem || !saved.problem->was_changed) return saved;  // else one came just now
    }
    return saved;
}

QString OwnPiecesFolder::removed_path() const { return path_ + QStringLiteral("/removed"); }

OwnPiecesFolder::Moved OwnPiecesFolder::remove(const QString& file) const {
    return move_into(removed_path(), file);
}

OwnPiecesFolder::Moved OwnPiecesFolder::bring_back(const QString& file) const {
    return move_into(path_, file);
}

/// The old file goes once the new one is there.
OwnPiecesFolder::Moved OwnPiecesFolder::rename(const QString& file, const QString& name) const {
    const LoadedFile loaded = load_document_file(file);
    if (loaded.problem) return {file, loaded.problem};
    if (loaded.document.newer || loaded.document.toy.pieces.empty())
        return {file, FileProblem{OwnPiecesText::tr("This file was written by a newer Roundwright, so it "
                                                    "keeps its name."),
                                  {}}};
    Toy renamed = loaded.document.toy;
    renamed.title = renamed.pieces[0].name = name.toStdString();
    if (file_name_of(renamed) == QFileInfo(file).completeBaseName())
        return {file, save_document_file(file, renamed)};
    const Moved saved = save_new(renamed);
    if (saved.problem) return {file, saved.problem};
    if (Disk::in_use().remove(QFile::encodeName(file)) != 0)
        return {saved.path, problem_at({DiskStep::remove, errno, file})};
    return saved;
}

}  // namespace roundwright::app
