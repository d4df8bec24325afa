#include "app/session/document_file.h"

#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

#include "core/base/limits.h"

namespace roundwright::app {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("DocumentFile", text); }

LoadedFile refused(const QString& message, const QString& place = {}) {
    return {{}, FileProblem{message, place}};
}

}  // namespace

LoadedFile load_document_file(const QString& path) {
    if (QFileInfo(path).isDir()) return refused(tr("This is a folder, not a toy."));
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) return refused(file.errorString());
    constexpr auto limit = static_cast<qint64>(max_file_bytes);
    const QByteArray bytes = file.read(limit + 1);
    if (file.error() != QFileDevice::NoError) return refused(file.errorString());
    if (bytes.size() > limit) {
        return refused(tr("The file is larger than %1 MiB, the most that is read.").arg(limit >> 20));
    }
    try {
        return {read_document({bytes.constData(), static_cast<std::size_t>(bytes.size())}), std::nullopt};
    } catch (const DocumentError& error) {
        return refused(QString::fromUtf8(error.what()), QString::fromStdString(error.path()));
    }
}

std::optional<FileProblem> save_document_file(const QString& path, const Toy& toy) {
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly)) return FileProblem{file.errorString(), {}};
    const std::string json = write_document(toy);
    file.write(json.data(), static_cast<qint64>(json.size()));
    if (!file.commit()) return FileProblem{file.errorString(), {}};
    return std::nullopt;
}

}  // namespace roundwright::app
