#include "app/kit/save_bytes.h"

#include <QFileInfo>
#include <QSaveFile>

namespace roundwright::app {
namespace {

// Buffered, a write that fails would say so when the file is closed, without its reason.
constexpr auto how = QIODevice::WriteOnly | QIODevice::Unbuffered;

/// A disk that fills takes a part and gives no reason; asked to take the rest, it does. The words must be
/// taken there: the file forgets them with the next step.
std::optional<QString> problem_with_writing(QFileDevice& file, const QByteArray& bytes) {
    for (qint64 written = 0; written < bytes.size();) {
        const qint64 taken = file.write(bytes.constData() + written, bytes.size() - written);
        if (taken <= 0) return file.errorString();
        written += taken;
    }
    return std::nullopt;
}

std::optional<QString> write_to_device(const QString& path, const QByteArray& bytes) {
    QFile file(path);
    if (!file.open(how)) return file.errorString();
    return problem_with_writing(file, bytes);
}

}  // namespace

bool is_device(const QString& path) {
    const QFileInfo info(path);
    return info.exists() && !info.isFile() && !info.isDir();
}

std::optional<QString> save_bytes(const QString& path, const QByteArray& bytes) {
    if (is_device(path)) return write_to_device(path, bytes);
    QSaveFile file(path);
    if (!file.open(how)) return file.errorString();
    if (const auto problem = problem_with_writing(file, bytes)) return problem;
    return file.commit() ? std::nullopt : std::optional(file.errorString());
}

}  // namespace roundwright::app
