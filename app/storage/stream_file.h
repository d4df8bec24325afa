#pragma once

#include "app/storage/whole_file.h"

namespace roundwright::app {

/// Neither a file nor a folder: a terminal, a pipe, /dev/null. It cannot be replaced, only read and written
/// as it comes.
[[nodiscard]] bool is_device(const QString& path);

/// Reads a pipe or a device to its end, or to `most` + 1 bytes, and waits for what comes. No stamp.
[[nodiscard]] ReadFile read_stream(const QString& path, qint64 most, Disk& disk = Disk::in_use());
/// The same of what is open already, as the standard input is.
[[nodiscard]] ReadFile read_stream(int file, const QString& name, qint64 most, Disk& disk = Disk::in_use());

/// Writes into a pipe or a device, all of it. No stamp.
[[nodiscard]] WrittenFile write_stream(const QString& path, const QByteArray& bytes,
                                       Disk& disk = Disk::in_use());

}  // namespace roundwright::app
