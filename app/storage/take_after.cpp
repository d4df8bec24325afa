#include "app/storage/take_after.h"

#include <algorithm>
#include <cerrno>
#include <fcntl.h>
#include <optional>

#include <QList>

#include "app/storage/opened_file.h"

namespace roundwright::app {
namespace {

constexpr mode_t rights = 07777;
constexpr mode_t rights_of_group = S_IRWXG | S_ISGID;
constexpr auto same_owner = static_cast<uid_t>(-1);  // chown(2): "is not changed"

std::optional<QByteArray> names_of_attributes(Disk& disk, int file) {
    const ssize_t room = disk.attributes(file, nullptr, 0);
    // A file system that knows no attributes has none.
    if (room <= 0) return room == 0 || errno == ENOTSUP ? std::optional(QByteArray()) : std::nullopt;
    QByteArray names(room, '\0');
    const ssize_t size = disk.attributes(file, names.data(), static_cast<std::size_t>(names.size()));
    if (size < 0) return std::nullopt;
    names.truncate(size);
    return names;
}

std::optional<QByteArray> attribute_of(Disk& disk, int file, const QByteArray& name) {
    const ssize_t room = disk.attribute(file, name, nullptr, 0);
    if (room < 0) return std::nullopt;
    QByteArray value(room, '\0');
    const ssize_t size = disk.attribute(file, name, value.data(), static_cast<std::size_t>(room));
    if (size < 0) return std::nullopt;
    value.truncate(size);
    return value;
}

/// Labels that the system gives every file and lets nobody else give are its own affair.
bool is_of_system(const QByteArray& name) { return name.startsWith("security."); }

bool copy_attribute(Disk& disk, int from, int to, const QByteArray& name) {
    const auto value = attribute_of(disk, from, name);
    if (!value) return is_of_system(name);
    if (attribute_of(disk, to, name) == value) return true;
    return disk.set_attribute(to, name, *value) == 0 || is_of_system(name);
}

bool copy_attributes(Disk& disk, int from, int to) {
    const auto names = names_of_attributes(disk, from);
    if (!names) return false;
    bool all = true;
    for (const QByteArray& name : names->split('\0'))
        if (!name.isEmpty()) all = copy_attribute(disk, from, to, name) && all;
    return all;
}

/// Which rights the file of before may hand on, given who could be made owner and group.
mode_t take_owner(Disk& disk, int file, const struct ::stat& wanted) {
    struct ::stat now {};
    if (disk.look_into(file, now) != 0) return S_IRWXU;
    if (now.st_uid == wanted.st_uid && now.st_gid == wanted.st_gid) return rights;
    if (disk.set_owner(file, wanted.st_uid, wanted.st_gid) == 0) return rights;
    const bool group = now.st_gid == wanted.st_gid || disk.set_owner(file, same_owner, wanted.st_gid) == 0;
    const mode_t owners = now.st_uid == wanted.st_uid ? rights : rights & ~mode_t{S_ISUID};
    return group ? owners : owners & ~rights_of_group;
}

bool take_rights(Disk& disk, int file, mode_t wanted) {
    struct ::stat now {};
    if (disk.look_into(file, now) == 0 && (now.st_mode & rights) == wanted) return true;
    return disk.set_mode(file, wanted) == 0;
}

bool is_owned_as(Disk& disk, int file, const struct ::stat& wanted) {
    struct ::stat now {};
    return disk.look_into(file, now) == 0 && now.st_uid == wanted.st_uid && now.st_gid == wanted.st_gid;
}

}  // namespace

bool take_after(Disk& disk, int file, const QByteArray& before, const struct ::stat& found) {
    const OpenedFile old(disk, disk.open(before, O_RDONLY | O_NOFOLLOW | O_NONBLOCK, 0));
    const mode_t may_have = take_owner(disk, file, found);
    const bool has_rights = take_rights(disk, file, found.st_mode & may_have);
    const bool has_owner = is_owned_as(disk, file, found);
    return old.is_open() && copy_attributes(disk, old.get(), file) && has_rights && has_owner;
}

}  // namespace roundwright::app
