#pragma once

#include <optional>

#include <QByteArray>
#include <QString>

namespace roundwright::app {

/// Writes a file, whole or not at all; a device or a pipe is written to directly. Why it could not be
/// written, in words; nothing if it was.
[[nodiscard]] std::optional<QString> save_bytes(const QString& path, const QByteArray& bytes);

/// Neither a file nor a folder: a terminal, a pipe, /dev/null.
[[nodiscard]] bool is_device(const QString& path);

}  // namespace roundwright::app
