#include "app/versions/version_keeper.h"

#include <deque>
#include <mutex>

#include <QFile>

#include "app/storage/disk_words.h"

namespace roundwright::app {

/// What is to be kept, in order. One thread at a time takes from it, and keeps what it took before it takes
/// the next.
struct VersionKeeper::Waiting {
    std::mutex keeping;
    std::mutex list;
    std::deque<Keeping> items;

    [[nodiscard]] Keeping next() {
        const std::lock_guard lock(list);
        if (items.empty()) return {};
        Keeping first = std::move(items.front());
        items.pop_front();
        return first;
    }

    [[nodiscard]] std::vector<KeptVersion> keep_all(const VersionStore& store) {
        const std::lock_guard lock(keeping);
        std::vector<KeptVersion> kept;
        for (Keeping item = next(); item; item = next()) kept.push_back(item(store));
        return kept;
    }
};

VersionKeeper::VersionKeeper(DocumentSession& session, VersionStore store, QObject* parent)
    : QObject(parent), session_(session), store_(std::move(store)), waiting_(std::make_shared<Waiting>()) {
    connect(&session_, &DocumentSession::about_to_save, this, &VersionKeeper::keep_what_will_be_replaced);
    connect(&session_, &DocumentSession::saved, this, &VersionKeeper::keep_saved);
    connect(&session_, &DocumentSession::file_changed, this, &VersionKeeper::follow_file);
    connect(&session_, &DocumentSession::standing_changed, this, &VersionKeeper::follow_file);
    connect(&background_, &render::Background::failed, this,
            [this](render::Background::Ticket, const QString& why) { Q_EMIT keeping_failed(why); });
    follow_file();
}

VersionKeeper::~VersionKeeper() { (void)waiting_->keep_all(store_); }

void VersionKeeper::settle() { take(waiting_->keep_all(store_)); }

std::optional<DiskFault> VersionKeeper::forget() {
    settle();
    return store_.forget(session_.path());
}

void VersionKeeper::add(Keeping keeping) {
    {
        const std::lock_guard lock(waiting_->list);
        waiting_->items.push_back(std::move(keeping));
    }
    background_.start(render::Lane::longer,
                      [this, waiting = waiting_, store = store_](const render::TaskRun&) -> render::Delivery {
                          return [this, kept = waiting->keep_all(store)] { take(kept); };
                      });
}

void VersionKeeper::take(const std::vector<KeptVersion>& kept) {
    for (const KeptVersion& one : kept) {
        if (!one.fault) {
            said_ = false;
            if (one.of) known_ = *one.of;
            continue;
        }
        known_ = {};
        if (!std::exchange(said_, true))
            Q_EMIT keeping_failed(
                tr("No earlier version of this toy could be kept. %1").arg(disk_fault_words(*one.fault)));
    }
}

void VersionKeeper::keep(const QString& path, const QByteArray& bytes, VersionKind kind) {
    add([=](const VersionStore& store) { return store.keep(path, bytes, kind); });
}

void VersionKeeper::keep_given_up() {
    if (session_.path().isEmpty()) return;
    add([path = session_.path(), toy = session_.said_toy()](const VersionStore& store) {
        return store.keep(path, QByteArray::fromStdString(write_document(toy)), VersionKind::not_saved);
    });
}

/// The saved bytes are written from the toy again, since that costs this thread nothing; the same toy gives
/// the same bytes.
void VersionKeeper::keep_saved() {
    path_ = session_.path();
    seen_ = session_.stamp();
    if (seen_.sha256.isEmpty()) return;  // a device
    known_ = seen_;  // what waits to be kept need not be waited for: its bytes are at hand
    add([path = path_, toy = session_.said_toy(), stamp = seen_](const VersionStore& store) {
        auto kept = store.keep(path, QByteArray::fromStdString(write_document(toy)), VersionKind::saved);
        kept.of = stamp;
        return kept;
    });
}

/// Another file was opened, or the file holds something else than before.
void VersionKeeper::follow_file() {
    const FileStamp& stamp = session_.stamp();
    if (session_.path().isEmpty() || (stamp == seen_ && session_.path() == path_)) return;
    seen_ = stamp;
    path_ = session_.path();
    add([path = path_](const VersionStore& store) { return store.keep_what_stands_in(path); });
}

/// A file that is opened and saved at once, one that another program has written meanwhile, another toy's
/// file: what stands there is kept before it goes.
void VersionKeeper::keep_what_will_be_replaced(const QString& path) {
    struct ::stat found {};
    if (Disk::in_use().look(QFile::encodeName(path), found) != 0) return;
    if (same_state(stamp_of(found), known_)) return;
    settle();
    if (!same_state(stamp_of(found), known_)) take({store_.keep_what_stands_in(path)});
}

}  // namespace roundwright::app
