#pragma once

#include <algorithm>
#include <cerrno>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <mutex>
#include <optional>
#include <set>
#include <string>
#include <unistd.h>
#include <vector>

#include "app/storage/disk.h"

namespace roundwright::app {

enum class DiskCall {
    open,
    read,
    write,
    sync,
    close,
    rename,
    remove,
    give_name,
    make_folder,
    remove_folder,
    look,
    may_write,
    link_target,
    set_mode,
    set_owner,
    attributes,
    set_attribute
};

/// A disk that does what the real one does until it is asked to fail: at the n-th call, at every call of some
/// kinds, when it is full, or by a loss of power, after which every call fails, so that what lies on the disk
/// then is what a crash leaves. It counts its calls, so a test can fail each in turn:
///
///     for (int n = 1;; ++n) {
///         FailingDisk disk;
///         disk.fail_at(n, EIO);
///         ...  // old or new, whole
///         if (disk.calls() < n) break;
///     }
///
/// Into the whole program it comes by `DiskInUse`. May be used from any thread.
class FailingDisk : public Disk {
  public:
    /// What a loss of power does to what was not synced: bytes of a file whose `sync` did not come, and names
    /// (new, moved, removed) in a folder whose `sync` did not come. POSIX promises neither way, so each is to
    /// be tried.
    enum class Unsynced { kept, lost };

    ~FailingDisk() override {
        for (const auto& [file, written] : unsynced_) ::close(written.copy);
    }

    /// The `call`-th from now on (the next one is 1) fails with `error`, once.
    void fail_at(int call, int error) {
        const std::scoped_lock lock(mutex_);
        fails_at_ = calls_ + call;
        error_ = error;
    }
    /// The `call`-th from now on fails, and all after it. A write takes half of its bytes before.
    void lose_power_at(int call, Unsynced unsynced) {
        const std::scoped_lock lock(mutex_);
        loses_power_at_ = calls_ + call;
        fate_ = unsynced;
    }
    /// Every call of these kinds fails with `error` from now on.
    void fail_each(const std::set<DiskCall>& calls, int error) {
        const std::scoped_lock lock(mutex_);
        each_ = calls;
        error_of_each_ = error;
    }
    /// No more than this at once, however much is asked for.
    void pass_at_most(std::size_t bytes) { at_once_ = bytes; }
    /// Each call is first interrupted by a signal (EINTR).
    void interrupt_each_call() { interrupts_ = true; }
    /// Room for so many bytes more; then ENOSPC.
    void have_room_for(qint64 bytes) { room_ = bytes; }
    /// As file systems that know no O_TMPFILE.
    void know_no_unnamed_files() { knows_unnamed_ = false; }
    /// As file systems that know no other rename than the one of POSIX.
    void know_only_plain_renames() { knows_renames_ = false; }
    /// Files are synced, folders fail with EIO.
    void sync_no_folders() { syncs_folders_ = false; }
    /// As before all that: a sound disk.
    void be_sound() {
        const std::scoped_lock lock(mutex_);
        fails_at_ = loses_power_at_ = 0;
        each_.clear();
        at_once_ = all;
        room_.reset();
        interrupts_ = has_no_power_ = false;
        syncs_folders_ = true;
    }

    [[nodiscard]] int calls() const {
        const std::scoped_lock lock(mutex_);
        return calls_;
    }
    [[nodiscard]] int calls(DiskCall kind) const {
        const std::scoped_lock lock(mutex_);
        return static_cast<int>(std::count(made_.begin(), made_.end(), kind));
    }
    [[nodiscard]] bool has_failed() const { return failed_; }

    int open(const QByteArray& path, int flags, mode_t mode) override {
        const std::scoped_lock lock(mutex_);
        const bool unnamed = (flags & O_TMPFILE) == O_TMPFILE;
        if (!goes(DiskCall::open)) return -1;
        if (unnamed && !knows_unnamed_) return fails(EOPNOTSUPP);
        if ((flags & O_CREAT) != 0) remember(path);
        return Disk::open(path, flags, mode);
    }
    ssize_t read(int file, char* bytes, std::size_t count) override {
        const std::scoped_lock lock(mutex_);
        return goes(DiskCall::read) ? Disk::read(file, bytes, std::min(count, at_once_)) : -1;
    }
    ssize_t write(int file, const char* bytes, std::size_t count) override {
        const std::scoped_lock lock(mutex_);
        const bool had_power = !has_no_power_;
        const bool does = goes(DiskCall::write);
        if (!does && has_no_power_ && had_power && fate_ == Unsynced::kept)
            (void)!Disk::write(file, bytes, count / 2);
        return does ? take(file, bytes, std::min(count, at_once_)) : -1;
    }
    int sync(int file) override {
        const std::scoped_lock lock(mutex_);
        if (!goes(DiskCall::sync)) return -1;
        struct ::stat found {};
        if (!syncs_folders_ && ::fstat(file, &found) == 0 && S_ISDIR(found.st_mode)) return fails(EIO);
        forget_about(file);  // what is synced is only counted: the real call takes its time
        return 0;
    }
    int close(int file) override {
        const std::scoped_lock lock(mutex_);
        const bool does = goes(DiskCall::close);
        const int error = errno;
        const int result = Disk::close(file);  // as Linux does, whatever the call gives
        return does ? result : fails(error);
    }
    int rename(const QByteArray& from, const QByteArray& to) override {
        const std::scoped_lock lock(mutex_);
        if (!goes(DiskCall::rename)) return -1;
        remember(from);
        remember(to);
        return Disk::rename(from, to);
    }
    int exchange(const QByteArray& one, const QByteArray& other) override {
        const std::scoped_lock lock(mutex_);
        if (!goes(DiskCall::rename)) return -1;
        if (!knows_renames_) return fails(EINVAL);
        remember(one);
        remember(other);
        return Disk::exchange(one, other);
    }
    int rename_to_free(const QByteArray& from, const QByteArray& to) override {
        const std::scoped_lock lock(mutex_);
        if (!goes(DiskCall::rename)) return -1;
        if (!knows_renames_) return fails(EINVAL);
        remember(from);
        remember(to);
        return Disk::rename_to_free(from, to);
    }
    int remove(const QByteArray& path) override {
        const std::scoped_lock lock(mutex_);
        if (!goes(DiskCall::remove)) return -1;
        remember(path);
        return Disk::remove(path);
    }
    int give_name(int file, const QByteArray& path) override {
        const std::scoped_lock lock(mutex_);
        if (!goes(DiskCall::give_name)) return -1;
        remember(path);
        return Disk::give_name(file, path);
    }
    int make_folder(const QByteArray& path, mode_t mode) override {
        const std::scoped_lock lock(mutex_);
        return goes(DiskCall::make_folder) ? Disk::make_folder(path, mode) : -1;
    }
    int remove_folder(const QByteArray& path) override {
        const std::scoped_lock lock(mutex_);
        return goes(DiskCall::remove_folder) ? Disk::remove_folder(path) : -1;
    }
    int look(const QByteArray& path, struct ::stat& found) override {
        const std::scoped_lock lock(mutex_);
        return goes(DiskCall::look) ? Disk::look(path, found) : -1;
    }
    int look_at_link(const QByteArray& path, struct ::stat& found) override {
        const std::scoped_lock lock(mutex_);
        return goes(DiskCall::look) ? Disk::look_at_link(path, found) : -1;
    }
    int look_into(int file, struct ::stat& found) override {
        const std::scoped_lock lock(mutex_);
        return goes(DiskCall::look) ? Disk::look_into(file, found) : -1;
    }
    int may_write(const QByteArray& path) override {
        const std::scoped_lock lock(mutex_);
        return goes(DiskCall::may_write) ? Disk::may_write(path) : -1;
    }
    ssize_t link_target(const QByteArray& path, char* target, std::size_t room) override {
        const std::scoped_lock lock(mutex_);
        return goes(DiskCall::link_target) ? Disk::link_target(path, target, room) : -1;
    }
    int set_mode(int file, mode_t mode) override {
        const std::scoped_lock lock(mutex_);
        return goes(DiskCall::set_mode) ? Disk::set_mode(file, mode) : -1;
    }
    int set_owner(int file, uid_t owner, gid_t group) override {
        const std::scoped_lock lock(mutex_);
        return goes(DiskCall::set_owner) ? Disk::set_owner(file, owner, group) : -1;
    }
    ssize_t attributes(int file, char* names, std::size_t room) override {
        const std::scoped_lock lock(mutex_);
        return goes(DiskCall::attributes) ? Disk::attributes(file, names, room) : -1;
    }
    ssize_t attribute(int file, const QByteArray& name, char* value, std::size_t room) override {
        const std::scoped_lock lock(mutex_);
        return goes(DiskCall::attributes) ? Disk::attribute(file, name, value, room) : -1;
    }
    int set_attribute(int file, const QByteArray& name, const QByteArray& value) override {
        const std::scoped_lock lock(mutex_);
        return goes(DiskCall::set_attribute) ? Disk::set_attribute(file, name, value) : -1;
    }

  private:
    static constexpr std::size_t all = static_cast<std::size_t>(-1) / 2;

    /// A file with bytes that were not synced, held open so that they can be lost after it was closed.
    struct Written {
        int copy = -1;
        off_t synced = 0;
    };
    /// What had a name before a call that was not synced changed it.
    struct Name {
        QByteArray path;
        std::optional<std::string> before;
    };

    int fails(int error) {
        failed_ = true;
        errno = error;
        return -1;
    }

    bool goes(DiskCall kind) {
        if (has_no_power_) return fails(EIO) == 0;
        if (interrupts_ && !interrupted_ && may_be_interrupted(kind)) {
            interrupted_ = true;
            errno = EINTR;
            return false;
        }
        interrupted_ = false;
        ++calls_;
        made_.push_back(kind);
        if (calls_ == loses_power_at_) {
            lose_power();
            return fails(EIO) == 0;
        }
        if (calls_ == fails_at_) return fails(error_) == 0;
        return each_.count(kind) == 0 || fails(error_of_each_) == 0;
    }

    static bool may_be_interrupted(DiskCall kind) {
        return kind == DiskCall::open || kind == DiskCall::read || kind == DiskCall::write ||
               kind == DiskCall::sync;
    }

    ssize_t take(int file, const char* bytes, std::size_t count) {
        if (room_) count = std::min(count, static_cast<std::size_t>(*room_));
        if (count == 0 && room_) return fails(ENOSPC);
        hold(file);
        const ssize_t taken = Disk::write(file, bytes, count);
        if (room_ && taken > 0) *room_ -= taken;
        return taken;
    }

    void hold(int file) {
        struct ::stat found {};
        if (::fstat(file, &found) != 0 || !S_ISREG(found.st_mode)) return;
        const auto [at, is_new] = unsynced_.try_emplace({found.st_dev, found.st_ino});
        if (is_new) at->second = {::dup(file), found.st_size};
    }

    static std::optional<std::string> content_of(const QByteArray& path) {
        std::ifstream file(path.constData(), std::ios::binary);
        if (!file) return std::nullopt;
        return std::string(std::istreambuf_iterator<char>(file), {});
    }

    void remember(const QByteArray& path) {
        if (loses_power_at_ != 0 && fate_ == Unsynced::lost) names_.push_back({path, content_of(path)});
    }

    void forget_about(int synced) {
        struct ::stat found {};
        if (::fstat(synced, &found) != 0) return;
        if (const auto at = unsynced_.find({found.st_dev, found.st_ino}); at != unsynced_.end()) {
            ::close(at->second.copy);
            unsynced_.erase(at);
        }
        names_.erase(std::remove_if(names_.begin(), names_.end(),
                                    [&](const Name& name) {
                                        const auto folder =
                                            std::filesystem::path(name.path.toStdString()).parent_path();
                                        struct ::stat other {};
                                        return ::stat(folder.empty() ? "." : folder.c_str(), &other) == 0 &&
                                               other.st_dev == found.st_dev && other.st_ino == found.st_ino;
                                    }),
                     names_.end());
    }

    void lose_power() {
        has_no_power_ = true;
        if (fate_ == Unsynced::kept) return;
        for (const auto& [file, written] : unsynced_) (void)!::ftruncate(written.copy, written.synced);
        for (auto name = names_.rbegin(); name != names_.rend(); ++name) {
            ::unlink(name->path.constData());
            if (name->before) std::ofstream(name->path.constData(), std::ios::binary) << *name->before;
        }
    }

    mutable std::mutex mutex_;
    std::vector<DiskCall> made_;
    int calls_ = 0;
    int fails_at_ = 0;
    int error_ = 0;
    int loses_power_at_ = 0;
    Unsynced fate_ = Unsynced::kept;
    std::set<DiskCall> each_;
    int error_of_each_ = 0;
    std::size_t at_once_ = all;
    std::optional<qint64> room_;
    bool interrupts_ = false;
    bool interrupted_ = false;
    bool knows_unnamed_ = true;
    bool knows_renames_ = true;
    bool syncs_folders_ = true;
    bool has_no_power_ = false;
    bool failed_ = false;
    std::map<std::pair<dev_t, ino_t>, Written> unsynced_;
    std::vector<Name> names_;
};

}  // namespace roundwright::app
