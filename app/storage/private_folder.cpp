#include <cerrno>
#include <fcntl.h>
#include <unistd.h>

#include <QFile>
#include <QFileInfo>

#include "app/storage/opened_file.h"
#include "app/storage/whole_file.h"

namespace roundwright::app {
namespace {

constexpr mode_t rights = 07777;
constexpr mode_t private_folder_mode = 0700;

DiskFault fault_at(const QString& path) { return {DiskStep::make_folder, errno, path}; }

/// The folders above belong to others too: those that are there stay as they are.
std::optional<DiskFault> make_folders_above(const QString& path, Disk& disk) {
    const QString above = QFileInfo(path).path();
    const QByteArray name = QFile::encodeName(above);
    if (above == path || disk.make_folder(name, private_folder_mode) == 0 || errno == EEXIST)
        return std::nullopt;
    if (errno != ENOENT) return fault_at(above);
    if (auto fault = make_folders_above(above, disk)) return fault;
    return disk.make_folder(name, private_folder_mode) == 0 || errno == EEXIST
               ? std::nullopt
               : std::optional(fault_at(above));
}

/// Not through a link, whose target anybody may have chosen.
std::optional<DiskFault> make_private(const QString& path, Disk& disk) {
    const QByteArray name = QFile::encodeName(path);
    struct ::stat found {};
    if (disk.look_at_link(name, found) != 0) return fault_at(path);
    if (S_ISLNK(found.st_mode)) return DiskFault{DiskStep::make_folder, ELOOP, path};
    const OpenedFile folder(disk, disk.open(name, O_RDONLY | O_DIRECTORY | O_NOFOLLOW, 0));
    if (!folder.is_open() || disk.look_into(folder.get(), found) != 0) return fault_at(path);
    if (found.st_uid != ::geteuid()) return DiskFault{DiskStep::make_folder, EPERM, path};
    if ((found.st_mode & rights) == private_folder_mode) return std::nullopt;
    return disk.set_mode(folder.get(), private_folder_mode) == 0 ? std::nullopt
                                                                 : std::optional(fault_at(path));
}

}  // namespace

std::optional<DiskFault> make_private_folder(const QString& path, Disk& disk) {
    const QByteArray name = QFile::encodeName(path);
    if (disk.make_folder(name, private_folder_mode) == 0) return std::nullopt;
    if (errno == ENOENT) {
        if (auto fault = make_folders_above(path, disk)) return fault;
        if (disk.make_folder(name, private_folder_mode) == 0) return std::nullopt;
    }
    return errno == EEXIST ? make_private(path, disk) : std::optional(fault_at(path));
}

}  // namespace roundwright::app
