#include "app/kept/kept_writer.h"

#include <algorithm>
#include <cerrno>
#include <new>

#include "core/document/json_document.h"

namespace roundwright::app {

KeptWriter::KeptWriter(KeptFolder folder, QString name) : folder_(std::move(folder)), name_(std::move(name)) {
    const std::scoped_lock guard(mutex_);
    static_cast<void>(hold_lock());  // tried again, and said, when there is something to keep
    folder_.clear_up(name_);
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
    number_ = std::max(number_, folder_.highest_number()) + 1;
    return {{number_, QDateTime::currentDateTimeUtc(), work.document, work.began_from, work.typed},
            QByteArray::fromStdString(write_document(work.toy))};
}

std::optional<DiskFault> KeptWriter::keep(Turn turn, const UnsavedWork& work) try {
    const std::scoped_lock guard(mutex_);
    if (turn <= done_) return std::nullopt;
    if (auto fault = hold_lock()) return fault;
    const auto written = write_whole(folder_.kept_file(name_), kept_bytes(copy_of(work)),
                                     {Links::refuse, true}, folder_.disk());
    if (written.fault) return written.fault;
    done_ = turn;
    return std::nullopt;
} catch (const std::bad_alloc&) {
    return DiskFault{DiskStep::write, ENOMEM, folder_.kept_file(name_)};
}

std::optional<DiskFault> KeptWriter::remove(Turn turn) {
    const std::scoped_lock guard(mutex_);
    if (turn <= done_) return std::nullopt;
    done_ = turn;
    return remove_file(folder_.kept_file(name_), folder_.disk());
}

}  // namespace roundwright::app
