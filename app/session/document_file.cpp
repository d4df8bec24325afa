#include "app/session/document_file.h"

#include <QCoreApplication>
#include <QFile>

#include "app/kit/save_bytes.h"
#include "app/storage/disk_words.h"
#include "core/base/limits.h"

namespace roundwright::app {
namespace {

struct DocumentFileText {
    Q_DECLARE_TR_FUNCTIONS(DocumentFile)
};

LoadedFile refused(const QString& message, const QString& place = {}) {
    return {{}, FileProblem{message, place}, {}};
}

QString too_large_words() {
    constexpr auto limit = static_cast<qint64>(max_file_bytes);
    return DocumentFileText::tr("The file is larger than the limit of %1 MiB.").arg(limit >> 20);
}

// A name that nobody asked for may be long.
constexpr int longest_key_shown = 80;

QString shortened(const std::string& text) {
    const QString words = QString::fromStdString(text);
    return words.size() <= longest_key_shown ? words : words.left(longest_key_shown) + QStringLiteral("…");
}

/// Otherwise a file would be written that nothing opens.
QString too_large_to_save_words() {
    constexpr auto limit = static_cast<qint64>(max_file_bytes);
    return DocumentFileText::tr(
               "As a file, the toy would be larger than the limit of %1 MiB. Shorten its notes, or "
               "divide it into two toys.")
        .arg(limit >> 20);
}

QString fault_words(const DocumentError& error) {
    switch (error.fault()) {
        case DocumentFault::not_a_toy:
            return DocumentFileText::tr("This is not a toy file.");
        case DocumentFault::broken_off:
            return DocumentFileText::tr("The end of the file is missing: it breaks off in line %1.")
                .arg(error.line());
        case DocumentFault::damaged:
            return DocumentFileText::tr("The file is damaged at line %1, column %2.")
                .arg(error.line())
                .arg(error.column());
        case DocumentFault::too_large:
            return too_large_words();
        case DocumentFault::too_deep:
            return DocumentFileText::tr("The file is nested too deeply at line %1, column %2.")
                .arg(error.line())
                .arg(error.column());
        case DocumentFault::too_many_values:
            return DocumentFileText::tr(
                       "From line %1, column %2 on, the file holds more than a toy can have.")
                .arg(error.line())
                .arg(error.column());
        case DocumentFault::doubled_key:
            return DocumentFileText::tr(
                       "This name stands twice, first at line %1, column %2. One of the two would "
                       "be lost: take one out in a text editor.")
                .arg(error.first_place().line)
                .arg(error.first_place().column);
        case DocumentFault::wrong_value:
            break;
    }
    return QString::fromUtf8(error.what());
}

constexpr auto most_bytes = static_cast<qint64>(max_file_bytes);

/// A part of the program itself, as the samples are.
LoadedFile load_own_document(const QString& resource) {
    QFile file(resource);
    if (!file.open(QIODevice::ReadOnly)) return refused(file.errorString());
    return load_document({file.readAll(), {}, std::nullopt});
}

QString place_words(const DocumentError& error) {
    const QString path = shortened(error.path());
    if (path.isEmpty() || error.line() == 0) return path;
    return DocumentFileText::tr("%1 (line %2, column %3)").arg(path).arg(error.line()).arg(error.column());
}

}  // namespace

LoadedFile load_document_file(const QString& path) {
    if (path.startsWith(QLatin1String(":/"))) return load_own_document(path);
    return load_document(read_whole(path, most_bytes));
}

LoadedFile load_document_stream(const QString& path) { return load_document(read_stream(path, most_bytes)); }

LoadedFile load_document(const ReadFile& file) {
    if (file.fault) return refused(disk_fault_words(*file.fault));
    if (file.bytes.size() > static_cast<qsizetype>(max_file_bytes)) return refused(too_large_words());
    try {
        const std::string_view text(file.bytes.constData(), static_cast<std::size_t>(file.bytes.size()));
        return {read_document(text), std::nullopt, file.stamp};
    } catch (const DocumentError& error) {
        return refused(fault_words(error), place_words(error));
    }
}

QString unread_key_words(const UnreadKey& key) {
    QString words = DocumentFileText::tr("at %1: kept, but not understood.").arg(shortened(key.place));
    if (!key.likely.empty())
        words = DocumentFileText::tr("%1 Did you mean “%2”?").arg(words, QString::fromStdString(key.likely));
    if (key.more > 0) words = DocumentFileText::tr("%1 (%2 more like it.)").arg(words).arg(key.more);
    return words;
}

QString mended_id_words(const MendedId& mended) {
    const QString place = shortened(mended.place);
    switch (mended.fault) {
        case IdFault::missing:
            return DocumentFileText::tr("at %1: missing. The piece was given an id of its own.").arg(place);
        case IdFault::taken:
            return DocumentFileText::tr(
                       "at %1: another piece has the same. This one was given an id of its own.")
                .arg(place);
        case IdFault::no_number:
            return DocumentFileText::tr(
                       "at %1: not a whole number from 1 on. The piece was given an id of its own.")
                .arg(place);
    }
    return {};
}

std::optional<FileProblem> save_document_file(const QString& path, const Toy& toy) {
    return save_document_file(path, toy, {}).problem;
}

SavedFile save_document_file(const QString& path, const Toy& toy, const WriteWishes& wishes) {
    const auto bytes = QByteArray::fromStdString(write_document(toy));
    if (bytes.size() > most_bytes) return {FileProblem{too_large_to_save_words(), {}}, {}, {}};
    const WrittenFile written = write_bytes(path, bytes, wishes);
    if (written.was_changed)
        return {FileProblem{DocumentFileText::tr("Another program has changed it."), {}, true}, {}, {}};
    if (written.fault) return {FileProblem{disk_fault_words(*written.fault), {}}, {}, {}};
    return {std::nullopt, written.stamp, written_remarks(written), written.not_yet_safe};
}

}  // namespace roundwright::app
