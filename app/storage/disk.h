#pragma once

#include <cstddef>
#include <sys/stat.h>
#include <sys/types.h>

#include <QByteArray>
#include <QString>

namespace roundwright::app {

/// What was being done to a file when the system said no.
enum class DiskStep { look, open, read, write, sync, rename, remove, make_folder };

/// A step that failed.
struct DiskFault {
    DiskStep step = DiskStep::look;
    int error = 0;  ///< the system's errno
    QString path;

    friend bool operator==(const DiskFault&, const DiskFault&) = default;
};

/// The calls of the system (POSIX.1-2017) by which the maker's own files are read and written: toys, kept
/// copies, earlier versions, exports. Each gives what the call of its name gives, errno included. Tests put a
/// disk in its place that fails or ends the program at any of them. May be used from any thread.
class Disk {
  public:
    Disk() = default;
    virtual ~Disk() = default;
    Disk(const Disk&) = delete;
    Disk& operator=(const Disk&) = delete;

    /// The disk of this machine.
    [[nodiscard]] static Disk& real();
    /// The one that the program reads and writes: this machine's, unless a test has put another one in its
    /// place (`DiskInUse`).
    [[nodiscard]] static Disk& in_use();

    virtual int open(const QByteArray& path, int flags, mode_t mode);
    virtual ssize_t read(int file, char* bytes, std::size_t count);
    virtual ssize_t write(int file, const char* bytes, std::size_t count);
    virtual int sync(int file);  ///< fsync
    virtual int close(int file);
    virtual int rename(const QByteArray& from, const QByteArray& to);
    /// renameat2(2) with RENAME_EXCHANGE: each has the other's name, at one moment.
    virtual int exchange(const QByteArray& one, const QByteArray& other);
    /// renameat2(2) with RENAME_NOREPLACE: EEXIST where something has that name.
    virtual int rename_to_free(const QByteArray& from, const QByteArray& to);
    virtual int remove(const QByteArray& path);  ///< unlink
    /// linkat of an open file that has no name (O_TMPFILE); needs /proc.
    virtual int give_name(int file, const QByteArray& path);
    virtual int make_folder(const QByteArray& path, mode_t mode);
    virtual int remove_folder(const QByteArray& path);                       ///< rmdir
    virtual int look(const QByteArray& path, struct ::stat& found);          ///< stat: through links
    virtual int look_at_link(const QByteArray& path, struct ::stat& found);  ///< lstat
    virtual int look_into(int file, struct ::stat& found);                   ///< fstat
    virtual int may_write(const QByteArray& path);                           ///< faccessat, W_OK, AT_EACCESS
    virtual ssize_t link_target(const QByteArray& path, char* target, std::size_t room);  ///< readlink
    virtual int set_mode(int file, mode_t mode);                                          ///< fchmod
    virtual int set_owner(int file, uid_t owner, gid_t group);                            ///< fchown
    /// Names of the extended attributes of a file, and the value of one; see listxattr(2), getxattr(2).
    virtual ssize_t attributes(int file, char* names, std::size_t room);
    virtual ssize_t attribute(int file, const QByteArray& name, char* value, std::size_t room);
    virtual int set_attribute(int file, const QByteArray& name, const QByteArray& value);
};

/// Puts another disk in the place of the one in use for as long as it lives.
class DiskInUse {
  public:
    explicit DiskInUse(Disk& disk);
    ~DiskInUse();
    DiskInUse(const DiskInUse&) = delete;
    DiskInUse& operator=(const DiskInUse&) = delete;

  private:
    Disk* const before_;
};

}  // namespace roundwright::app
