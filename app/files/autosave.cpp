#include "app/files/autosave.h"

#include <algorithm>
#include <utility>

#include "app/kept/same_file.h"

namespace roundwright::app {
namespace {

// A kept copy may be as much as this behind, and the time that writing takes.
constexpr int usual_interval_ms = 500;
// The first change after a while waits for what the key itself leads to: the shape and its picture.
constexpr int shortest_wait_ms = 100;
constexpr int retry_ms = 3000;

}  // namespace

Autosave::Autosave(DocumentSession& session, const QString& state_folder, QObject* parent, Disk& disk)
    : QObject(parent),
      session_(session),
      folder_(state_folder, disk),
      name_(KeptFolder::new_name()),
      writer_(std::make_shared<KeptWriter>(folder_, name_)),
      interval_ms_(usual_interval_ms) {
    timer_.setSingleShot(true);
    timer_.setTimerType(Qt::PreciseTimer);
    connect(&timer_, &QTimer::timeout, this, &Autosave::keep_soon);
    connect(&session_, &DocumentSession::toy_changed, this, &Autosave::follow_toy);
    connect(&session_, &DocumentSession::standing_changed, this, &Autosave::something_changed);
    connect(&session_, &DocumentSession::modified_changed, this, &Autosave::follow_modified);
    // An end right after a save must not leave a copy that is older than the file.
    connect(&session_, &DocumentSession::about_to_save, this, &Autosave::bring_up_to_date);
    connect(&session_, &DocumentSession::saved, this, &Autosave::keep_now);
    connect(&background_, &render::Background::failed, this, [this] {
        writing_ = false;  // what has no name: it is tried again
        timer_.start(retry_ms);
    });
    connect(&syncs_, &render::Background::failed, this, [this] {
        syncing_ = false;
        write_anew_.start();
    });
    // The system may have dropped what it could not sync (fsync(2)).
    write_anew_.setSingleShot(true);
    write_anew_.setInterval(retry_ms);
    connect(&write_anew_, &QTimer::timeout, this, [this] {
        if (!all_kept()) kept_.reset();
        keep_soon();
    });
    something_changed();
}

Autosave::~Autosave() {
    session_.disconnect(this);
    background_.cancel();
    syncs_.cancel();
    const auto work = unsaved_work();
    if (!work)
        take_away();
    else if ((work == kept_ || !writer_->keep(++turn_, *work)) && !writer_->make_safe().fault)
        let_older_copies_go();
}

std::optional<UnsavedWork> Autosave::unsaved_work() const {
    const bool is_saved = !session_.modified() && session_.saved_safely();
    if (given_up_ || (is_saved && pending_.empty())) return std::nullopt;
    return UnsavedWork{session_.said_toy(), session_.path(), session_.stamp(), pending_};
}

// --- what changes

void Autosave::follow_toy(const ChangeSet& changes) {
    // Another toy is open: what was brought back and could not be kept stays where it was found.
    if (changes.everything && !recovering_) taken_over_.clear();
    given_up_ = false;
    something_changed();
}

void Autosave::follow_modified(bool modified) {
    // Saved, or the file of before is open again; only in the first case is what was brought back in a file.
    if (!modified && !recovering_)
        std::erase_if(taken_over_,
                      [this](const LeftBehind& left) { return says_nothing_new(left, session_.path()); });
    something_changed();
}

void Autosave::set_pending(const PendingEntry& pending) {
    if (pending == pending_) return;
    pending_ = pending;
    if (!pending_.empty()) given_up_ = false;
    something_changed();
}

/// The timer runs from the first change that is not kept: steady typing does not put it off.
void Autosave::something_changed() {
    if (fault_ && all_kept()) tell(std::nullopt);  // saved, undone or given up: there is nothing left to keep
    if (recovering_ || timer_.isActive() || writing_ || unsaved_work() == kept_) return;
    const int since = since_last_.isValid()
                          ? static_cast<int>(std::min<qint64>(since_last_.elapsed(), 60'000))
                          : interval_ms_;
    timer_.start(std::clamp(interval_ms_ - since, std::min(shortest_wait_ms, interval_ms_), interval_ms_));
}

// --- keeping

void Autosave::keep_soon() {
    timer_.stop();
    if (writing_) return;  // its answer looks at what there is then
    const auto work = unsaved_work();
    if (work == kept_) return;
    if (work) return start_keeping(*work);
    kept_.reset();
    tell(std::nullopt);
    answered_ = ++turn_;
    background_.start(render::Lane::next_key, [turn = turn_, writer = writer_](const render::TaskRun&) {
        static_cast<void>(writer->remove(turn));
        return render::Delivery{};
    });
}

void Autosave::start_keeping(const UnsavedWork& work) {
    writing_ = true;
    since_last_.start();
    const auto turn = ++turn_;
    background_.start(render::Lane::next_key,
                      [this, turn, writer = writer_, work](const render::TaskRun&) -> render::Delivery {
                          const auto fault = writer->keep(turn, work);
                          return [this, turn, work, fault] { take_written(turn, work, fault); };
                      });
}

void Autosave::take_written(KeptWriter::Turn turn, const UnsavedWork& work,
                            const std::optional<DiskFault>& fault) {
    writing_ = false;
    if (turn <= answered_) return something_changed();  // what is newer was done meanwhile
    answered_ = turn;
    if (fault) {
        tell(fault);
        return timer_.start(retry_ms);
    }
    kept_ = work;
    kept_turn_ = turn;
    start_making_safe();
    something_changed();
}

/// One at a time: what is written meanwhile is synced afterwards.
void Autosave::start_making_safe() {
    if (syncing_) return;
    syncing_ = true;
    syncs_.start(render::Lane::next_key, [this, writer = writer_](const render::TaskRun&) {
        return render::Delivery([this, safe = writer->make_safe()] {
            syncing_ = false;
            take_safe(safe);
        });
    });
}

void Autosave::take_safe(const KeptWriter::Safe& safe) {
    if (safe.fault) {
        tell(safe.fault);
        return write_anew_.start();
    }
    safe_turn_ = std::max(safe_turn_, safe.turn);
    if (kept_ && !is_safe()) return start_making_safe();
    if (!kept_) return;
    tell(std::nullopt);
    let_older_copies_go();
    if (unsaved_work() == kept_) session_.happened(FileEvent::kept);
}

void Autosave::keep_now() {
    const auto work = unsaved_work();
    if (!work) return take_away();
    timer_.stop();
    if ((work != kept_ || fault_) && !write_at_once(*work)) return;
    take_safe(is_safe() ? KeptWriter::Safe{safe_turn_} : writer_->make_safe());
    something_changed();
}

/// False: it could not be written, and that is told.
bool Autosave::write_at_once(const UnsavedWork& work) {
    const auto turn = ++turn_;
    if (const auto fault = writer_->keep(turn, work)) {
        take_written(turn, work, fault);
        return false;
    }
    answered_ = kept_turn_ = turn;
    kept_ = work;
    return true;
}

bool Autosave::all_kept() const {
    const auto work = unsaved_work();
    return !work || (work == kept_ && is_safe());
}

/// A copy that says what the file is about to say is not offered, even if the program ends before it is gone.
/// And a save may wait long for its disk: what it saves is in a copy meanwhile, which need not be synced
/// where there is no older one.
void Autosave::bring_up_to_date() {
    if (kept_ || writing_) return keep_now();
    const auto work = unsaved_work();
    if (!work || !write_at_once(*work)) return;
    const auto if_not_saved = [this] {
        if (kept_ && !is_safe()) start_making_safe();
    };
    QMetaObject::invokeMethod(this, if_not_saved, Qt::QueuedConnection);
}

/// A copy that cannot be removed says nothing new, or is given up; either way nothing is lost.
void Autosave::take_away() {
    timer_.stop();
    const bool is_there = kept_ || writing_;
    kept_.reset();
    fault_.reset();
    answered_ = ++turn_;
    if (is_there) static_cast<void>(writer_->remove(turn_));
}

void Autosave::give_up() {
    // Saved, but the disk could not confirm it: the next start compares the copy with the file.
    if (!session_.modified() && !session_.saved_safely()) {
        pending_ = {};
        return keep_now();
    }
    given_up_ = true;
    taken_over_.clear();
    take_away();
}

void Autosave::tell(const std::optional<DiskFault>& fault) {
    const bool failed_before = std::exchange(fault_, fault).has_value();
    if (fault) session_.happened(FileEvent::keeping_failed);
    if (fault) Q_EMIT keeping_failed(*fault);
    if (!fault && failed_before) Q_EMIT keeping_works();
}

// --- what others left

/// Says nothing else than the file: then it goes.
bool Autosave::says_nothing_new(const LeftBehind& left, const QString& document) const {
    if (document.isEmpty() || !left.head.typed.empty()) return false;
    const auto copy = look_into(left);
    const auto saved = copy.problem ? LoadedFile{} : load_document_file(document);
    const bool same = !copy.problem && !saved.problem && saved.document.toy == copy.document.toy;
    if (same) static_cast<void>(discard(left));
    return same;
}

std::vector<LeftBehind> Autosave::left_behind() const {
    auto found = folder_.left_behind();
    std::erase_if(found,
                  [this](const LeftBehind& left) { return says_nothing_new(left, left.head.document); });
    return found;
}

std::vector<LeftBehind> Autosave::left_of(const QString& document) const {
    auto found = folder_.left_behind();
    std::erase_if(found, [&](const LeftBehind& left) {
        return !is_of_file(left.head, document) || says_nothing_new(left, document);
    });
    return found;
}

LoadedFile Autosave::look_into(const LeftBehind& left) const {
    if (!left.toy_file.isEmpty()) return load_document_file(left.toy_file);
    auto copy = folder_.read(left.file);
    if (copy) return load_document({std::move(copy->toy), {}, {}});
    return {{}, FileProblem{tr("It is damaged, or was written by a newer Roundwright."), {}}, {}};
}

/// The toy in the copy is the one in its file: nothing but what was typed is lost.
bool Autosave::only_typing_is_new(const LeftBehind& left, const Toy& toy, const QString& document) {
    if (left.head.typed.empty() || document.isEmpty()) return false;
    const auto saved = load_document_file(document);
    return !saved.problem && saved.document.toy == toy;
}

std::optional<FileProblem> Autosave::recover(LeftBehind left, const QString& document) {
    auto loaded = look_into(left);
    if (loaded.problem) return loaded.problem;
    recovering_ = true;
    if (!only_typing_is_new(left, loaded.document.toy, document) || session_.open(document))
        session_.recover(std::move(loaded.document.toy), document, left.head.began_from);
    recovering_ = false;
    given_up_ = false;
    pending_ = left.head.typed;
    taken_over_.push_back(std::move(left));
    keep_now();
    return std::nullopt;
}

std::optional<DiskFault> Autosave::discard(const LeftBehind& left) const {
    if (!left.window.isEmpty()) return folder_.remove_all(left.window);
    if (!left.toy_file.isEmpty()) {
        if (auto fault = remove_file(left.toy_file, folder_.disk())) return fault;
    }
    return remove_file(left.file, folder_.disk());
}

/// Only once this window's own copy of the same work, or a save, is safely on disk.
void Autosave::let_older_copies_go() {
    for (const LeftBehind& left : std::exchange(taken_over_, {})) static_cast<void>(discard(left));
}

bool Autosave::another_is_running() const { return !folder_.running(name_).empty(); }

}  // namespace roundwright::app
