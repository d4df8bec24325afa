#include "app/storage/whole_file.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <climits>
#include <fcntl.h>

#include <QCryptographicHash>
#include <QFile>
#include <QRandomGenerator>

#include "app/storage/opened_file.h"
#include "app/storage/take_after.h"

namespace roundwright::app {
namespace {

constexpr std::int64_t ns_per_second = 1'000'000'000;
constexpr mode_t private_mode = 0600;
constexpr mode_t usual_mode = 0666;  // less what the user's umask takes away
constexpr int most_links = 40;       // as Linux has it: path_resolution(7)

std::int64_t ns_of(const struct ::timespec& time) {
    return static_cast<std::int64_t>(time.tv_sec) * ns_per_second + time.tv_nsec;
}

DiskFault fault_at(DiskStep step, const QString& path) { return {step, errno, path}; }

QByteArray sha256_of(const QByteArray& bytes) {
    return QCryptographicHash::hash(bytes, QCryptographicHash::Sha256);
}

QByteArray folder_of(const QByteArray& path) {
    const auto slash = path.lastIndexOf('/');
    return slash < 0 ? QByteArray(".") : path.left(std::max<qsizetype>(slash, 1));
}

/// Where links lead in the end, even if no file is there yet. A link that is not absolute is read from its
/// own folder, which only the system can do: ".." after a folder that is a link is not the folder before it.
std::optional<QByteArray> end_of_links(Disk& disk, QByteArray path) {
    for (int link = 0; link < most_links; ++link) {
        std::array<char, PATH_MAX> target{};
        const ssize_t length = disk.link_target(path, target.data(), target.size());
        if (length < 0) return errno == EINVAL || errno == ENOENT ? std::optional(path) : std::nullopt;
        const QByteArray next(target.data(), length);
        path = next.startsWith('/') ? next : folder_of(path) + '/' + next;
    }
    errno = ELOOP;
    return std::nullopt;
}

/// Beside the file, under a name that no file has; short, so that a long name leaves room for the ending.
QByteArray name_beside(const QByteArray& path) {
    constexpr int base = 36;
    const QByteArray unique = QByteArray::number(QRandomGenerator::system()->generate64(), base);
    return folder_of(path) + "/.roundwright-" + unique + ".part";
}

bool sync_folder(Disk& disk, const QByteArray& path) {
    const QByteArray name = folder_of(path);
    const OpenedFile folder(disk,
                            again_if_interrupted([&] { return disk.open(name, O_RDONLY | O_DIRECTORY, 0); }));
    if (!folder.is_open()) return errno == EACCES;  // a folder that may be written but not read
    return again_if_interrupted([&] { return disk.sync(folder.get()); }) == 0 || errno == EINVAL;
}

/// One write of a file: the new one beside it, and what was there before.
class Replacing {
  public:
    Replacing(QString named, QByteArray path, const WriteWishes& wishes, Disk& disk)
        : named_(std::move(named)), path_(std::move(path)), wishes_(wishes), disk_(disk) {}
    ~Replacing() {
        if (has_name_) disk_.remove(beside_);
    }
    Replacing(const Replacing&) = delete;
    Replacing& operator=(const Replacing&) = delete;

    WrittenFile run(const QByteArray& bytes) {
        if (!look_at_before() || !fill(bytes) || !is_still_that_of_before() || !put_in_place())
            return result_;
        result_.other_names_left = before_ && before_->st_nlink > 1;
        result_.not_yet_safe = !wishes_.safe_at_once || !sync_folder(disk_, path_);
        struct ::stat found {};
        if (disk_.look_into(file_->get(), found) == 0) result_.stamp = stamp_of(found);
        result_.stamp.sha256 = sha256_of(bytes);
        return result_;
    }

  private:
    /// False: nothing can be written in its place.
    bool look_at_before() {
        struct ::stat found {};
        if (disk_.look_at_link(path_, found) != 0) {
            return errno == ENOENT ? is_still_that_of_before() : fail(DiskStep::look);
        }
        before_ = found;
        if (!S_ISREG(found.st_mode)) {
            errno = S_ISLNK(found.st_mode) ? ELOOP : S_ISDIR(found.st_mode) ? EISDIR : ENOTSUP;
            return fail(DiskStep::open);
        }
        // Renaming asks for the folder's rights alone.
        if (disk_.may_write(path_) != 0) return fail(DiskStep::open);
        return is_still_that_of_before();
    }

    bool is_still_that_of_before() {
        if (!wishes_.in_place_of && !wishes_.only_new) return true;
        struct ::stat found {};
        const bool there = disk_.look_at_link(path_, found) == 0;
        if (!there && errno != ENOENT) return fail(DiskStep::look);
        result_.was_changed =
            wishes_.only_new ? there : !there || !same_state(stamp_of(found), *wishes_.in_place_of);
        return !result_.was_changed;
    }

    /// The new file under its name.
    bool put_in_place() {
        if (wishes_.only_new) return rename_to_free();
        return wishes_.in_place_of && before_ ? exchange() : rename();
    }

    bool rename() {
        if (disk_.rename(beside_, path_) != 0) return fail(DiskStep::rename);
        has_name_ = false;
        return true;
    }

    bool rename_to_free() {
        if (disk_.rename_to_free(beside_, path_) == 0) {
            has_name_ = false;
            return true;
        }
        result_.was_changed = errno == EEXIST;
        return !result_.was_changed && (is_not_known_here() ? rename() : fail(DiskStep::rename));
    }

    bool exchange() {
        if (disk_.exchange(beside_, path_) != 0) {
            result_.was_changed = errno == ENOENT;
            return !result_.was_changed && (is_not_known_here() ? rename() : fail(DiskStep::rename));
        }
        struct ::stat came_out {};
        if (disk_.look_at_link(beside_, came_out) != 0)
            (void)fail(DiskStep::look);
        else
            result_.was_changed = !is_one_to_replace(came_out);
        return result_.ok() ? drop_beside() : put_back();
    }

    /// The exchange itself has changed st_ctim.
    [[nodiscard]] bool is_one_to_replace(const struct ::stat& came_out) const {
        FileStamp found = stamp_of(came_out);
        found.moved_ns = wishes_.in_place_of->moved_ns;
        return same_state(found, *wishes_.in_place_of);
    }

    bool drop_beside() {
        if (disk_.remove(beside_) == 0) has_name_ = false;  // else it is tried once more at the end
        return true;
    }

    /// True: it could not be, and the new file is in place.
    bool put_back() {
        if (disk_.exchange(beside_, path_) == 0) {
            // Replaced a second time meanwhile: what replaced ours stays in place.
            if (!is_ours(beside_)) (void)disk_.exchange(beside_, path_);
            return false;
        }
        result_.fault.reset();
        result_.was_changed = false;
        result_.theirs_beside = QFile::decodeName(beside_);
        has_name_ = false;
        return true;
    }

    /// Or nobody can say.
    [[nodiscard]] bool is_ours(const QByteArray& path) const {
        struct ::stat there {};
        struct ::stat ours {};
        return disk_.look_at_link(path, there) != 0 || disk_.look_into(file_->get(), ours) != 0 ||
               (there.st_dev == ours.st_dev && there.st_ino == ours.st_ino);
    }

    /// The file system has no such way to rename, or the kernel none at all.
    [[nodiscard]] static bool is_not_known_here() {
        return errno == EINVAL || errno == ENOSYS || errno == ENOTSUP;
    }

    bool fail(DiskStep step) {
        result_.fault = fault_at(step, named_);
        return false;
    }

    /// The new file, whole and synced, under the name beside. Where the system can, it has no name until
    /// then, so that a program that is ended leaves nothing.
    bool fill(const QByteArray& bytes) {
        beside_ = name_beside(path_);
        if (open(folder_of(path_), O_WRONLY | O_TMPFILE)) {
            if (!fill_open_file(bytes)) return false;
            has_name_ = disk_.give_name(file_->get(), beside_) == 0;
            if (has_name_) return true;
            beside_ = name_beside(path_);
        }
        has_name_ = open(beside_, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW);
        return has_name_ ? fill_open_file(bytes) : fail(DiskStep::open);
    }

    bool open(const QByteArray& path, int how) {
        // A file that takes the place of another may hold what others must not read, until it has its rights.
        const mode_t mode = wishes_.is_private || before_ ? private_mode : usual_mode;
        file_.emplace(disk_, again_if_interrupted([&] { return disk_.open(path, how, mode); }));
        return file_->is_open();
    }

    /// Nothing more can fail to be written once it is synced, so it may stay open until it is in place. What
    /// is to be safe later is synced, and fails, in `make_safe`.
    bool fill_open_file(const QByteArray& bytes) {
        if (!write_all(disk_, file_->get(), bytes)) return fail(DiskStep::write);
        if (before_ && !wishes_.is_private)
            result_.attributes_lost = !take_after(disk_, file_->get(), path_, *before_);
        if (!wishes_.safe_at_once) return true;
        return again_if_interrupted([&] { return disk_.sync(file_->get()); }) == 0 || fail(DiskStep::sync);
    }

    const QString named_;
    const QByteArray path_;
    const WriteWishes& wishes_;
    Disk& disk_;
    std::optional<struct ::stat> before_;
    std::optional<OpenedFile> file_;
    QByteArray beside_;
    bool has_name_ = false;  ///< beside: to be removed unless it takes the place of the file
    WrittenFile result_;
};

ReadFile read_opened(Disk& disk, int file, const QString& path, qint64 most) {
    ReadFile read;
    struct ::stat found {};
    if (disk.look_into(file, found) != 0) {
        read.fault = fault_at(DiskStep::read, path);
    } else if (!S_ISREG(found.st_mode)) {
        errno = S_ISDIR(found.st_mode) ? EISDIR : ENOTSUP;
        read.fault = fault_at(DiskStep::read, path);
    } else if (!read_all(disk, file, most, read.bytes)) {
        read.fault = fault_at(DiskStep::read, path);
    }
    read.stamp = stamp_of(found);
    return read;
}

/// Nobody wrote it meanwhile.
bool is_as_read(Disk& disk, int file, const FileStamp& read) {
    struct ::stat found {};
    return disk.look_into(file, found) == 0 && same_state(stamp_of(found), read);
}

/// What the system would read as a shorter name is none.
bool is_name(const QByteArray& name) {
    if (!name.contains('\0')) return true;
    errno = EINVAL;
    return false;
}

ReadFile read_once(const QString& path, qint64 most, Links links, Disk& disk, bool& changed) {
    changed = false;
    const QByteArray name = QFile::encodeName(path);
    if (!is_name(name)) return {{}, {}, fault_at(DiskStep::read, path)};
    const int how = O_RDONLY | O_NONBLOCK | O_NOCTTY | (links == Links::refuse ? O_NOFOLLOW : 0);
    const OpenedFile file(disk, again_if_interrupted([&] { return disk.open(name, how, 0); }));
    if (!file.is_open()) return {{}, {}, fault_at(DiskStep::read, path)};
    ReadFile read = read_opened(disk, file.get(), path, most);
    changed = !read.fault && !is_as_read(disk, file.get(), read.stamp);
    return read;
}

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
    constexpr int most_tries = 3;
    ReadFile read;
    bool changed = true;
    for (int tries = 0; changed && tries < most_tries; ++tries)
        read = read_once(path, most, links, disk, changed);
    if (!read.fault && read.bytes.size() <= most) read.stamp.sha256 = sha256_of(read.bytes);
    return read;
}

WrittenFile write_whole(const QString& path, const QByteArray& bytes, const WriteWishes& wishes, Disk& disk) {
    const QByteArray name = QFile::encodeName(path);
    std::optional<QByteArray> target;
    if (is_name(name)) target = wishes.links == Links::follow ? end_of_links(disk, name) : name;
    if (target) return Replacing(path, *target, wishes, disk).run(bytes);
    WrittenFile failed;
    failed.fault = fault_at(DiskStep::look, path);
    return failed;
}

std::optional<DiskFault> make_safe(const QString& path, Disk& disk) {
    const QByteArray name = QFile::encodeName(path);
    constexpr int how = O_WRONLY | O_NOFOLLOW | O_NONBLOCK;
    const OpenedFile file(disk, again_if_interrupted([&] { return disk.open(name, how, 0); }));
    if (!file.is_open()) return fault_at(DiskStep::open, path);
    const bool synced = again_if_interrupted([&] { return disk.sync(file.get()); }) == 0;
    return synced && sync_folder(disk, name) ? std::nullopt : std::optional(fault_at(DiskStep::sync, path));
}

std::optional<DiskFault> remove_file(const QString& path, Disk& disk) {
    const QByteArray name = QFile::encodeName(path);
    if (!is_name(name) || disk.remove(name) != 0)
        return errno == ENOENT ? std::nullopt : std::optional(fault_at(DiskStep::remove, path));
    return sync_folder(disk, name) ? std::nullopt : std::optional(fault_at(DiskStep::sync, path));
}

}  // namespace roundwright::app
