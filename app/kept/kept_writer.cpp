#include "app/kept/kept_writer.h"

#include <algorithm>
#include <cerrno>
#include <new>

#include <QFile>

#include "core/document/json_document.h"

namespace roundwright::app {

KeptWriter::KeptWriter(KeptFolder folder, QString name) : folder_(std::move(folder)), name_(std::move(name)) {
    const std::scoped_lock guard(mutex_);
    static_cast<void>(hold_lock());  // tried again, and said, when there is something to keep
    folder_.clear_up(name_);
    if (const auto before = folder_.files_of(name_); !before.empty()) safe_ = before.back().number;
}

/// The lock stands before the copy does, so that nobody takes a running window's copy for one left behind.
std::optional<DiskFault> KeptWriter::hold_lock() {
    if (auto fault = folder_.make()) return fault;
    if (lock_.is_in_place()) return std::nullopt;
    const QString file = folder_.lock_file(name_);
    if (lock_.take(file) == LockAnswer::taken) return std::nullopt;
    return DiskFault{DiskStep::open, lock_.error(), file};
}

KeptCopy KeptWriter::copy_of(const UnsavedWork& work) {
    const std::uint64_t number = std::max(number_, folder_.highest_number()) + 1;
    return {{number, QDateTime::currentDateTimeUtc(), work.document, work.began_from, work.typed},
            QByteArray::fromStdString(write_document(work.toy))};
}

std::optional<DiskFault> KeptWriter::keep(Turn turn, const UnsavedWork& work) try {
    const std::scoped_lock guard(mutex_);
    if (turn <= done_) return std::nullopt;
    if (auto fault = hold_lock()) return fault;
    const KeptCopy copy = copy_of(work);
    const WriteWishes wishes{.links = Links::refuse, .is_private = true, .safe_at_once = false};
    const QString file = folder_.kept_file(name_, copy.head.number);
    const auto written = write_whole(file, kept_bytes(copy), wishes, folder_.disk());
    if (written.fault) return written.fault;
    number_ = copy.head.number;
    done_ = turn;
    remove_superseded();
    return std::nullopt;
} catch (const std::bad_alloc&) {
    return DiskFault{DiskStep::write, ENOMEM, folder_.path()};
}

/// What is neither the safe one, nor about to be, nor the newest. What cannot be removed goes with the next;
/// nothing is synced, since an old copy that comes to light again is of no account beside a newer one.
void KeptWriter::remove_superseded() {
    for (const KeptFile& file : folder_.files_of(name_)) {
        const bool is_wanted =
            file.number == safe_ || file.number >= number_ || syncing_.contains(file.number);
        if (!is_wanted) folder_.disk().remove(QFile::encodeName(file.path));
    }
}

KeptWriter::Safe KeptWriter::make_safe() {
    std::unique_lock guard(mutex_);
    const std::uint64_t number = number_;
    const Turn turn = done_;
    if (number <= std::max(safe_, gone_)) return {turn};
    const auto at = syncing_.insert(number);
    guard.unlock();
    const auto fault = app::make_safe(folder_.kept_file(name_, number), folder_.disk());
    guard.lock();
    syncing_.erase(at);
    if (number <= std::max(safe_, gone_)) return {turn};  // what became of it no longer matters
    if (fault) return {turn, fault};
    safe_ = number;
    remove_superseded();
    return {turn};
}

std::optional<DiskFault> KeptWriter::remove(Turn turn) {
    const std::scoped_lock guard(mutex_);
    if (turn <= done_) return std::nullopt;
    done_ = turn;
    gone_ = number_;
    return folder_.remove_all(name_);
}

}  // namespace roundwright::app
