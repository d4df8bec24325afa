#include "app/storage/disk.h"

#include <atomic>
#include <cstdio>
#include <fcntl.h>
#include <sys/xattr.h>
#include <unistd.h>

namespace roundwright::app {
namespace {

std::atomic<Disk*>& disk_in_use() {
    static std::atomic<Disk*> disk = &Disk::real();
    return disk;
}

}  // namespace

Disk& Disk::real() {
    static Disk disk;
    return disk;
}

Disk& Disk::in_use() { return *disk_in_use(); }

DiskInUse::DiskInUse(Disk& disk) : before_(disk_in_use().exchange(&disk)) {}

DiskInUse::~DiskInUse() { disk_in_use() = before_; }

int Disk::open(const QByteArray& path, int flags, mode_t mode) {
    return ::open(path.constData(), flags | O_CLOEXEC, mode);
}

ssize_t Disk::read(int file, char* bytes, std::size_t count) { return ::read(file, bytes, count); }

ssize_t Disk::write(int file, const char* bytes, std::size_t count) { return ::write(file, bytes, count); }

int Disk::sync(int file) { return ::fsync(file); }

int Disk::close(int file) { return ::close(file); }

int Disk::rename(const QByteArray& from, const QByteArray& to) {
    return std::rename(from.constData(), to.constData());
}

int Disk::exchange(const QByteArray& one, const QByteArray& other) {
    return ::renameat2(AT_FDCWD, one.constData(), AT_FDCWD, other.constData(), RENAME_EXCHANGE);
}

int Disk::rename_to_free(const QByteArray& from, const QByteArray& to) {
    return ::renameat2(AT_FDCWD, from.constData(), AT_FDCWD, to.constData(), RENAME_NOREPLACE);
}

int Disk::remove(const QByteArray& path) { return ::unlink(path.constData()); }

int Disk::give_name(int file, const QByteArray& path) {
    const QByteArray opened = "/proc/self/fd/" + QByteArray::number(file);
    return ::linkat(AT_FDCWD, opened.constData(), AT_FDCWD, path.constData(), AT_SYMLINK_FOLLOW);
}

int Disk::make_folder(const QByteArray& path, mode_t mode) { return ::mkdir(path.constData(), mode); }

int Disk::remove_folder(const QByteArray& path) { return ::rmdir(path.constData()); }

int Disk::look(const QByteArray& path, struct ::stat& found) { return ::stat(path.constData(), &found); }

int Disk::look_at_link(const QByteArray& path, struct ::stat& found) {
    return ::lstat(path.constData(), &found);
}

int Disk::look_into(int file, struct ::stat& found) { return ::fstat(file, &found); }

int Disk::may_write(const QByteArray& path) {
    return ::faccessat(AT_FDCWD, path.constData(), W_OK, AT_EACCESS);
}

ssize_t Disk::link_target(const QByteArray& path, char* target, std::size_t room) {
    return ::readlink(path.constData(), target, room);
}

int Disk::set_mode(int file, mode_t mode) { return ::fchmod(file, mode); }

int Disk::set_owner(int file, uid_t owner, gid_t group) { return ::fchown(file, owner, group); }

ssize_t Disk::attributes(int file, char* names, std::size_t room) { return ::flistxattr(file, names, room); }

ssize_t Disk::attribute(int file, const QByteArray& name, char* value, std::size_t room) {
    return ::fgetxattr(file, name.constData(), value, room);
}

int Disk::set_attribute(int file, const QByteArray& name, const QByteArray& value) {
    return ::fsetxattr(file, name.constData(), value.constData(), static_cast<std::size_t>(value.size()), 0);
}

}  // namespace roundwright::app
