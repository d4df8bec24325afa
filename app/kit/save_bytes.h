#pragma once

#include <optional>

#include <QByteArray>
#include <QString>

#include "app/storage/stream_file.h"

namespace roundwright::app {

/// Writes a file, whole or not at all; a device or a pipe is written to directly.
[[nodiscard]] WrittenFile write_bytes(const QString& path, const QByteArray& bytes,
                                      const WriteWishes& wishes = {});

struct SavedBytes {
    std::optional<QString> problem;  ///< why it could not be written, in words; nothing if it was
    QString remarks;                 ///< what is to be known of a file that was; mostly nothing
};

/// The same, in words.
[[nodiscard]] SavedBytes save_bytes(const QString& path, const QByteArray& bytes);

}  // namespace roundwright::app
