#include "app/own_pieces/own_pieces_folder.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>

#include "app/kit/toy_files.h"
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

std::optional<FileProblem> OwnPiecesFolder::keep(const Toy& piece) const {
    if (const auto fault = make_private_folder(path_)) return FileProblem{disk_fault_words(*fault), {}};
    const QString name = file_name_of(piece);
    std::optional<FileProblem> problem;
    for (int number = 1; number <= most_of_one_name; ++number) {
        const QString numbered = number == 1 ? name : QStringLiteral("%1 %2").arg(name).arg(number);
        const QString path = QStringLiteral("%1/%2.%3").arg(path_, numbered, toy_ending());
        if (QFileInfo::exists(path)) continue;
        WriteWishes wishes;
        wishes.only_new = true;
        problem = save_document_file(path, piece, wishes).problem;
        if (!problem || !problem->was_changed) return problem;  // else one came just now
    }
    return problem;
}

}  // namespace roundwright::app
