#include "app/storage/stream_file.h"

#include <fcntl.h>

#include <QFile>

#include "app/storage/opened_file.h"

namespace roundwright::app {
namespace {

DiskFault fault_at(DiskStep step, const QString& path) { return {step, errno, path}; }

}  // namespace

bool is_device(const QString& path) {
    struct ::stat found {};
    return Disk::in_use().look(QFile::encodeName(path), found) == 0 && !S_ISREG(found.st_mode) &&
           !S_ISDIR(found.st_mode);
}

ReadFile read_stream(int file, const QString& name, qint64 most, Disk& disk) {
    ReadFile read;
    if (!read_all(disk, file, most, read.bytes)) read.fault = fault_at(DiskStep::read, name);
    return read;
}

ReadFile read_stream(const QString& path, qint64 most, Disk& disk) {
    const QByteArray name = QFile::encodeName(path);
    const OpenedFile file(disk,
                          again_if_interrupted([&] { return disk.open(name, O_RDONLY | O_NOCTTY, 0); }));
    if (!file.is_open()) return {{}, {}, fault_at(DiskStep::read, path)};
    return read_stream(file.get(), path, most, disk);
}

WrittenFile write_stream(const QString& path, const QByteArray& bytes, Disk& disk) {
    WrittenFile written;
    const QByteArray name = QFile::encodeName(path);
    OpenedFile file(disk, again_if_interrupted([&] { return disk.open(name, O_WRONLY | O_NOCTTY, 0); }));
    if (!file.is_open())
        written.fault = fault_at(DiskStep::open, path);
    else if (!write_all(disk, file.get(), bytes) || !file.close())
        written.fault = fault_at(DiskStep::write, path);
    return written;
}

}  // namespace roundwright::app
