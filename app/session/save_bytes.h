#pragma once

#include <optional>

#include <QByteArray>
#include <QString>

namespace roundwright::app {

/// Writes a file, whole or not at all. Why it could not be written; nothing if it was.
[[nodiscard]] std::optional<QString> save_bytes(const QString& path, const QByteArray& bytes);

}  // namespace roundwright::app
