#include "app/storage/whole_file.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <fcntl.h>
#include <unistd.h>

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>
#include <QRandomGenerator>

namespace roundwright::app {
namespace {

constexpr std::int64_t ns_per_second = 1'000'000'000;
constexpr mode_t private_mode = 0600;
constexpr mode_t usual_mode = 0666;  // less what the user's umask takes away
constexpr mode_t private_folder_mode = 0700;
constexpr mode_t rights = 07777;
constexpr int most_links = 40;  // as Linux has it: path_resolution(7)

std::int64_t ns_of(const struct ::timespec& time) {
    return static_cast<std::int64_t>(time.tv_sec) * ns_per_second + time.tv_nsec;
}

DiskFault fault_at(DiskStep step, const QString& path) { return {step, errno, path}; }

/// A file that closes itself. Closing says nothing new once the file was synced.
class OpenedFile {
  public:
    OpenedFile(Disk& disk, int file) : disk_(disk), file_(file) {}
    ~OpenedFile() {
        if (file_ >= 0) disk_.close(file_);
    }
    OpenedFile(const OpenedFile&) = delete;
    OpenedFile& operator=(const OpenedFile&) = delete;
    [[nodiscard]] int get() const { return file_; }
    [[nodiscard]] bool is_open() const { return file_ >= 0; }
    [[nodiscard]] bool close() { return disk_.close(std::exchange(file_, -1)) == 0; }

  private:
    Disk& disk_;
    int file_;
};

int again_if_interrupted(const auto& call) {
    int result = call();
    while (result < 0 && errno == EINTR) result = call();
    return result;
}

bool write_all(Disk& disk, int file, const QByteArray& bytes) {
    for (qsizetype written = 0; written < bytes.size();) {
        const auto taken =
            disk.write(file, bytes.constData() + written, static_cast<std::size_t>(bytes.size() - written));
        if (taken < 0 && errno == EINTR) continue;
        if (taken == 0) errno = ENOSPC;
        if (taken <= 0) return false;
        written += taken;
    }
    return true;
}

bool read_all(Disk& disk, int file, qint64 most, QByteArray& bytes) {
    constexpr std::size_t at_once = 1 << 20;
    while (bytes.size() <= most) {
        const auto before = bytes.size();
        const auto wanted = std::min<qint64>(at_once, most + 1 - before);
        bytes.resize(before + wanted);
        const auto got = disk.read(file, bytes.data() + before, static_cast<std::size_t>(wanted));
        bytes.resize(before + std::max<ssize_t>(got, 0));
        if (got < 0 && errno != EINTR) return false;
        if (got == 0) return true;
    }
    return true;
}

QByteArray sha256_of(const QByteArray& bytes) {
    return QCryptographicHash::hash(bytes, QCryptographicHash::Sha256);
}

/// Where a link leads in the end, even if no file is there yet.
std::optional<QString> end_of_links(QString path, DiskFault& fault) {
    for (int link = 0; link < most_links; ++link) {
        const QFileInfo info(path);
        if (!info.isSymLink()) return path;
        path = info.symLinkTarget();
    }
    fault = {DiskStep::look, ELOOP, path};
    return std::nullopt;
}

/// The extended attributes of `from`; false if one could not be given to `to`. Those of a file system that
/// knows none are none.
bool copy_attributes(Disk& disk, int from, int to) {
    const ssize_t room = disk.attributes(from, nullptr, 0);
    if (room <= 0) return room == 0 || errno == ENOTSUP;
    QByteArray names(room, '\0');
    const ssize_t size = disk.attributes(from, names.data(), static_cast<std::size_t>(names.size()));
    if (size < 0) return false;
    names.truncate(size);
    bool all = true;
    for (const QByteArray& name : names.split('\0')) {
        if (name.isEmpty()) continue;
        QByteArray value(std::max<ssize_t>(disk.attribute(from, name, nullptr, 0), 0), '\0');
        const ssize_t got = disk.attribute(from, name, value.data(), static_cast<std::size_t>(value.size()));
        all = got >= 0 && disk.set_attribute(to, name, value) == 0 && all;
    }
    return all;
}

/// Gives a new file what the file of before had: rights, owner, attributes. False if some of it was not to be
/// had.
bool take_after(Disk& disk, int file, const QString& before, const struct ::stat& found) {
    const OpenedFile old(disk, disk.open(QFile::encodeName(before), O_RDONLY | O_NOFOLLOW | O_NONBLOCK, 0));
    bool all = disk.set_owner(file, found.st_uid, found.st_gid) == 0;
    // Rights of a group are not handed to another one.
    const mode_t mode = all ? found.st_mode & rights : found.st_mode & rights & ~mode_t{07070};
    all = disk.set_mode(file, mode) == 0 && all;
    return old.is_open() ? copy_attributes(disk, old.get(), file) && all : false;
}

/// Beside the file, under a name that no file has.
QString name_beside(const QString& path) {
    const QFileInfo info(path);
    constexpr qsizetype most_of_name = 40;  // so that a long name leaves room for the ending
    return QStringLiteral("%1/.%2.%3.part")
        .arg(info.path(), info.fileName().left(most_of_name),
             QString::number(QRandomGenerator::system()->generate64(), 36));
}

bool sync_folder(Disk& disk, const QString& path) {
    OpenedFile folder(disk, disk.open(QFile::encodeName(QFileInfo(path).path()), O_RDONLY | O_DIRECTORY, 0));
    if (!folder.is_open()) return errno == EACCES;  // a folder that may be written but not read
    return again_if_interrupted([&] { return disk.sync(folder.get()); }) == 0 || errno == EINVAL;
}

/// One write of a file: the new one beside it, and what was there before.
class Replacing {
  public:
    Replacing(QString path, const WriteWishes& wishes, Disk& disk)
        : path_(std::move(path)), wishes_(wishes), disk_(disk) {}

    WrittenFile run(const QByteArray& bytes) {
        if (!look_at_before()) return result_;
        const QByteArray beside = QFile::encodeName(name_beside(path_));
        if (!fill(beside, bytes) || !is_still_that_of_before()) {
            disk_.remove(beside);
            return result_;
        }
        if (disk_.rename(beside, QFile::encodeName(path_)) != 0) {
            result_.fault = fault_at(DiskStep::rename, path_);
            disk_.remove(beside);
            return result_;
        }
        result_.other_names_left = before_ && before_->st_nlink > 1;
        result_.not_yet_safe = !sync_folder(disk_, path_);
        result_.stamp.sha256 = sha256_of(bytes);
        look_at_new();
        return result_;
    }

  private:
    /// False: nothing can be written in its place.
    bool look_at_before() {
        struct ::stat found {};
        if (disk_.look_at_link(QFile::encodeName(path_), found) == 0) {
            before_ = found;
            if (S_ISLNK(found.st_mode)) errno = ELOOP;
            if (S_ISDIR(found.st_mode)) errno = EISDIR;
            if (S_ISREG(found.st_mode)) return is_still_that_of_before();
            result_.fault = fault_at(DiskStep::open, path_);
            return false;
        }
        if (errno == ENOENT) return is_still_that_of_before();
        result_.fault = fault_at(DiskStep::look, path_);
        return false;
    }

    bool is_still_that_of_before() {
        if (!wishes_.in_place_of && !wishes_.only_new) return true;
        struct ::stat found {};
        const bool there = disk_.look_at_link(QFile::encodeName(path_), found) == 0;
        result_.was_changed =
            wishes_.only_new ? there : !there || !same_state(stamp_of(found), *wishes_.in_place_of);
        return !result_.was_changed;
    }

    bool fail(DiskStep step) {
        result_.fault = fault_at(step, path_);
        return false;
    }

    bool fill(const QByteArray& beside, const QByteArray& bytes) {
        constexpr int how = O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW;
        // A file that takes the place of another may hold what others must not read, until it has its rights.
        const mode_t mode = wishes_.is_private || before_ ? private_mode : usual_mode;
        OpenedFile file(disk_, again_if_interrupted([&] { return disk_.open(beside, how, mode); }));
        if (!file.is_open()) return fail(DiskStep::open);
        if (!write_all(disk_, file.get(), bytes)) return fail(DiskStep::write);
        if (before_ && !wishes_.is_private)
            result_.attributes_lost = !take_after(disk_, file.get(), path_, *before_);
        if (again_if_interrupted([&] { return disk_.sync(file.get()); }) != 0) return fail(DiskStep::sync);
        return file.close() || fail(DiskStep::write);
    }

    void look_at_new() {
        struct ::stat found {};
        if (disk_.look_at_link(QFile::encodeName(path_), found) != 0) return;
        const QByteArray sha256 = result_.stamp.sha256;
        result_.stamp = stamp_of(found);
        result_.stamp.sha256 = sha256;
    }

    const QString path_;
    const WriteWishes& wishes_;
    Disk& disk_;
    std::optional<struct ::stat> before_;
    WrittenFile result_;
};

}  // namespace

FileStamp stamp_of(const struct ::stat& found) {
    return {static_cast<std::uint64_t>(found.st_dev),
            static_cast<std::uint64_t>(found.st_ino),
            static_cast<std::int64_t>(found.st_size),
            ns_of(found.st_mtim),
            ns_of(found.st_ctim),
            {}};
}

bool same_state(const FileStamp& one, const FileStamp& other) {
    return one.device == other.device && one.inode == other.inode && one.size == other.size &&
           one.changed_ns == other.changed_ns && one.moved_ns == other.moved_ns;
}

ReadFile read_whole(const QString& path, qint64 most, Links links, Disk& disk) {
    const int how = O_RDONLY | O_NONBLOCK | (links == Links::refuse ? O_NOFOLLOW : 0);
    const OpenedFile file(disk,
                          again_if_interrupted([&] { return disk.open(QFile::encodeName(path), how, 0); }));
    ReadFile read;
    if (!file.is_open()) {
        read.fault = fault_at(DiskStep::read, path);
        return read;
    }
    struct ::stat found {};
    if (disk.look_into(file.get(), found) != 0 || !read_all(disk, file.get(), most, read.bytes)) {
        read.fault = fault_at(DiskStep::read, path);
        return read;
    }
    read.stamp = stamp_of(found);
    read.stamp.sha256 = sha256_of(read.bytes);
    return read;
}

WrittenFile write_whole(const QString& path, const QByteArray& bytes, const WriteWishes& wishes, Disk& disk) {
    WrittenFile failed;
    QString target = QFileInfo(path).absoluteFilePath();
    if (wishes.links == Links::follow) {
        DiskFault fault;
        const auto end = end_of_links(target, fault);
        if (!end) {
            failed.fault = fault;
            return failed;
        }
        target = *end;
    }
    return Replacing(target, wishes, disk).run(bytes);
}

std::optional<DiskFault> remove_file(const QString& path, Disk& disk) {
    if (disk.remove(QFile::encodeName(path)) != 0)
        return errno == ENOENT ? std::nullopt : std::optional(fault_at(DiskStep::remove, path));
    return sync_folder(disk, path) ? std::nullopt : std::optional(fault_at(DiskStep::sync, path));
}

std::optional<DiskFault> make_private_folder(const QString& path, Disk& disk) {
    const QByteArray name = QFile::encodeName(path);
    if (disk.make_folder(name, private_folder_mode) == 0) return std::nullopt;
    if (errno == ENOENT) {
        const QString above = QFileInfo(path).path();
        if (above == path) return fault_at(DiskStep::make_folder, path);
        if (auto fault = make_private_folder(above, disk)) return fault;
        if (disk.make_folder(name, private_folder_mode) == 0) return std::nullopt;
    }
    if (errno != EEXIST) return fault_at(DiskStep::make_folder, path);
    const OpenedFile folder(disk, disk.open(name, O_RDONLY | O_DIRECTORY | O_NOFOLLOW, 0));
    struct ::stat found {};
    if (!folder.is_open() || disk.look_into(folder.get(), found) != 0)
        return fault_at(DiskStep::make_folder, path);
    if (found.st_uid != ::geteuid()) return DiskFault{DiskStep::make_folder, EPERM, path};
    if ((found.st_mode & rights) == private_folder_mode) return std::nullopt;
    return disk.set_mode(folder.get(), private_folder_mode) == 0
               ? std::nullopt
               : std::optional(fault_at(DiskStep::make_folder, path));
}

}  // namespace roundwright::app
