#include "app/session/document_session.h"

#include <algorithm>
#include <cerrno>
#include <numeric>
#include <utility>

#include <QFileInfo>
#include <QScopedValueRollback>

#include "app/session/assembly.h"
#include "core/assembly/check_joins.h"
#include "core/base/limits.h"

namespace roundwright::app {
namespace {

/// By itself, or through links.
bool is_same_path(const QString& one, const QString& other) {
    const QFileInfo first(one), second(other);
    if (first.absoluteFilePath() == second.absoluteFilePath()) return true;
    return first.exists() && first.canonicalFilePath() == second.canonicalFilePath();
}

}  // namespace

DocumentSession::DocumentSession(QObject* parent)
    : QObject(parent),
      history_([this](const ToyDelta& step, ToyHistory::Way way) { follow_step(step, way); }) {
    assembly_ = std::make_unique<Assembly>(studies_);
    connect(assembly_.get(), &Assembly::changed, this, &DocumentSession::assembled_changed);
    connect(assembly_.get(), &Assembly::failed, this, &DocumentSession::refuse);
    connect(&studies_, &Studies::shape_ready, assembly_.get(), &Assembly::shape_came);
    connect(&studies_, &Studies::busy_changed, this, &DocumentSession::solving_changed);
    connect(&studies_, &Studies::failed, this, &DocumentSession::refuse);
    connect(&studies_, &Studies::every_stitch_changed, this,
            [this](PieceId piece) { Q_EMIT every_stitch_changed(index_of(piece)); });
    connect(&preferences_, &Preferences::every_stitch_changed, &studies_, &Studies::set_every_stitch);
    studies_.set_every_stitch(preferences_.every_stitch());
    connect(&studies_, &Studies::study_ready, this,
            [this](PieceId piece) { Q_EMIT study_ready(index_of(piece), studies_.study(piece)); });
    connect(&studies_, &Studies::surface_ready, this, [this](PieceId piece) {
        Q_EMIT surface_ready(index_of(piece), studies_.surface(piece), studies_.shown_study(piece));
    });
    connect(&history_.steps(), &QUndoStack::indexChanged, this, &DocumentSession::follow_steps);
    connect(&history_.steps(), &QUndoStack::cleanChanged, this, &DocumentSession::follow_steps);
}

DocumentSession::~DocumentSession() { history_.steps().disconnect(this); }

// --- what is open

int DocumentSession::index_of(PieceId piece) const {
    const auto index = toy().pieces.index_of(piece);
    return index ? static_cast<int>(*index) : -1;
}

PieceId DocumentSession::id_of(int piece) const {
    const auto& pieces = toy().pieces;
    const auto index = static_cast<std::size_t>(piece);
    return piece >= 0 && index < pieces.size() ? pieces.id(index) : PieceId::none;
}

const Piece* DocumentSession::piece() const {
    return current_piece_ < 0 ? nullptr : &toy().pieces[static_cast<std::size_t>(current_piece_)];
}

void DocumentSession::set_current_piece(int piece) {
    piece = std::clamp(piece, -1, static_cast<int>(toy().pieces.size()) - 1);
    if (piece == current_piece_) return;
    current_piece_ = piece;
    current_id_ = id_of(piece);
    end_merging();
    studies_.show_piece(current_id_);
    // Who follows the piece finds no rounds chosen that are another piece's.
    const bool had_selection = !std::exchange(selection_, {}).empty();
    Q_EMIT current_piece_changed(piece);
    if (had_selection && selection_.empty()) Q_EMIT selection_changed(selection_);
    select_rounds({});
    studies_.tell();
}

void DocumentSession::select_rounds(std::vector<int> rounds) {
    const int count = piece() ? static_cast<int>(piece()->rounds.size()) : 0;
    std::erase_if(rounds, [&](int round) { return round < 0 || round >= count; });
    std::ranges::sort(rounds);
    rounds.erase(std::ranges::unique(rounds).begin(), rounds.end());
    if (rounds == selection_) return;
    selection_ = std::move(rounds);
    end_merging();
    Q_EMIT selection_changed(selection_);
}

// --- editing

bool DocumentSession::may_edit() {
    switch (roundwright::app::read_only(standing())) {
        case ReadOnly::newer_format:
            refuse(
                tr("This file was written by a newer Roundwright, so it is read-only. Save it under another "
                   "name to change it."));
            return false;
        case ReadOnly::open_elsewhere:
            refuse(
                tr("This toy is open in another window. Change it there, or save a copy and change that."));
            return false;
        case ReadOnly::no_right:
        case ReadOnly::no:
            break;
    }
    return true;
}

bool DocumentSession::edit(const QString& text, Toy after, const QString& merge_key) {
    if (!may_edit()) return false;
    after = with_words_remembered(said_toy(), std::move(after),
                                  [this](const Toy& toy) { return counts_of(toy); });
    after = with_joins_remembered(said_toy(), std::move(after));
    if (history_.make_step(text, std::move(after), merge_key)) return true;
    end_preview();
    return false;
}

bool DocumentSession::edit(const QString& text, const std::function<Toy(Toy)>& change,
                           const QString& merge_key) {
    return edit(text, change(said_toy()), merge_key);
}

bool DocumentSession::edit_piece(const QString& text, const std::function<void(Piece&)>& change,
                                 const QString& merge_key) {
    Toy after = said_toy();
    const auto index = after.pieces.index_of(current_id_);
    if (!index) return false;
    change(after.pieces[*index]);
    return edit(text, std::move(after), merge_key);
}

void DocumentSession::follow_step(const ToyDelta& step, ToyHistory::Way way) {
    const bool back = way == ToyHistory::Way::undone;
    const auto changes = back ? step.reversed_changes() : step.changes();
    const auto seen = preview_.toy() ? changes_between(*preview_.toy(), said_toy()) : changes;
    preview_.end();
    toy_became(seen);
    if (way != ToyHistory::Way::made) reveal(changes, back ? step.after() : step.before());
}

/// Undo and redo bring what they changed back into sight.
void DocumentSession::reveal(const ChangeSet& changes, const Toy& before) {
    end_merging();
    if (changes.pieces.empty()) return;
    set_current_piece(piece_to_reveal(changes, before));
    if (changes.piece_list() || changes.rounds.empty()) return;
    std::vector<int> rounds(static_cast<std::size_t>(std::max(changes.rounds.inserted, 1)));
    std::iota(rounds.begin(), rounds.end(), changes.rounds.first);
    if (piece() && rounds.front() >= static_cast<int>(piece()->rounds.size())) --rounds.front();
    select_rounds(std::move(rounds));
}

/// The one that came back or changed. Pieces that only moved, or went, leave the current one on show.
int DocumentSession::piece_to_reveal(const ChangeSet& changes, const Toy& before) const {
    const auto& [first, removed, inserted] = changes.pieces;
    if (changes.pieces.one_for_one()) return first;
    for (int piece = first; piece < first + inserted; ++piece) {
        if (!before.pieces.index_of(id_of(piece))) return piece;
    }
    return current_piece_;
}

// --- what is being tried

std::uint64_t DocumentSession::begin_preview() { return may_edit() ? preview_.begin() : 0; }

void DocumentSession::show_preview(std::uint64_t ticket, Toy toy) {
    if (!preview_.is_of(ticket)) return;
    const auto changes = changes_between(this->toy(), toy);
    if (changes.empty()) return;
    if (!preview_.toy()) studies_.keep_for_after_preview();
    preview_.show(std::move(toy));
    toy_became(changes);
}

bool DocumentSession::commit_preview(std::uint64_t ticket, const QString& text) {
    if (!preview_.is_of(ticket)) return false;
    if (preview_.toy()) return edit(text, *preview_.toy());
    preview_.end();
    return false;
}

void DocumentSession::roll_back_preview(std::uint64_t ticket) {
    if (preview_.is_of(ticket)) end_preview();
}

void DocumentSession::end_preview() {
    const auto changes = preview_.toy() ? changes_between(*preview_.toy(), said_toy()) : ChangeSet{};
    preview_.end();
    if (!changes.empty()) toy_became(changes);
}

void DocumentSession::try_out(Toy toy) {
    if (current_piece_ >= 0) studies_.try_out(std::move(toy));
}

// --- following the toy

void DocumentSession::toy_became(const ChangeSet& changes) {
    const int piece_before = current_piece_;
    const PieceId id_before = current_id_;
    const auto selection_before = selection_;
    keep_places_valid();
    const bool another_piece = current_piece_ != piece_before || current_id_ != id_before;
    const bool another_selection = selection_ != selection_before;
    studies_.follow(toy(), current_id_);
    if (!preview_.toy()) studies_.preview_is_over();
    assembly_->follow(toy());
    Q_EMIT toy_changed(changes);
    if (another_piece) Q_EMIT current_piece_changed(current_piece_);
    if (another_selection) Q_EMIT selection_changed(selection_);
    studies_.tell();
}

/// The current piece stays the same one where it moves; where it goes, another takes its place.
void DocumentSession::keep_places_valid() {
    const int last = static_cast<int>(toy().pieces.size()) - 1;
    if (const int place = index_of(current_id_); place >= 0) {
        current_piece_ = place;
    } else {
        current_piece_ = std::min(std::max(current_piece_, 0), last);
        current_id_ = id_of(current_piece_);
        selection_.clear();
    }
    const int rounds = piece() ? static_cast<int>(piece()->rounds.size()) : 0;
    std::erase_if(selection_, [&](int round) { return round >= rounds; });
}

// --- what is computed

std::shared_ptr<const SharedGraph> DocumentSession::graph_of(const Toy& toy, int piece) const {
    return studies_.graph(toy.pieces, static_cast<std::size_t>(piece));
}

CountsOfPieces DocumentSession::counts_of(const Toy& toy) const {
    CountsOfPieces counts;
    for (int piece = 0; piece < static_cast<int>(toy.pieces.size()); ++piece)
        counts.push_back(stitch_counts(graph_of(toy, piece)->get().graph));
    return counts;
}

std::shared_ptr<const PieceStudy> DocumentSession::study(int piece) const {
    return studies_.study(id_of(piece));
}

std::shared_ptr<const PieceStudy> DocumentSession::shown_study(int piece) const {
    return studies_.shown_study(id_of(piece));
}

std::shared_ptr<const StitchSurface> DocumentSession::surface(int piece) const {
    return studies_.surface(id_of(piece));
}

EveryStitchState DocumentSession::every_stitch(int piece) const {
    return studies_.every_stitch(id_of(piece));
}

bool DocumentSession::is_up_to_date(int piece) const { return studies_.is_up_to_date(id_of(piece)); }

bool DocumentSession::shows_last_good_shape(int piece) const {
    return studies_.shows_last_good_shape(id_of(piece));
}

// --- its file

void DocumentSession::show_whole_toy(bool whole) {
    if (std::exchange(shows_whole_toy_, whole) == whole) return;
    end_merging();
    assembly_->set_wanted(whole);
    Q_EMIT whole_toy_shown(whole);
}

std::shared_ptr<const AssembledToy> DocumentSession::assembled() const { return assembly_->toy(); }

bool DocumentSession::assembled_is_up_to_date() const { return assembly_->is_up_to_date(); }

void DocumentSession::set_most_triangles_together(std::size_t triangles) {
    assembly_->set_most_triangles(triangles);
}

bool DocumentSession::modified() const { return counts_as_unsaved(file_.standing); }

void DocumentSession::happened(FileEvent event) { stand(after(file_.standing, event)); }

void DocumentSession::follow_steps() {
    if (replacing_) return;
    happened(history_.steps().isClean() ? FileEvent::back_to_saved : FileEvent::edited);
}

void DocumentSession::stand(const FileStanding& standing) {
    if (standing == file_.standing) return;
    const bool was_read_only = read_only();
    file_.standing = standing;
    if (read_only() != was_read_only) Q_EMIT file_changed();
    tell_modified();
    Q_EMIT standing_changed();
}

void DocumentSession::tell_modified() {
    if (modified() == told_modified_) return;
    told_modified_ = modified();
    Q_EMIT modified_changed(told_modified_);
}

void DocumentSession::replace_toy(Toy toy, OpenFile file) {
    preview_.end();
    show_whole_toy(false);
    assembly_->clear();
    studies_.clear();
    file_ = std::move(file);
    {
        const QScopedValueRollback replacing(replacing_, true);
        history_.begin_with(std::move(toy));
    }
    current_piece_ = said_toy().pieces.empty() ? -1 : 0;
    current_id_ = id_of(current_piece_);
    selection_.clear();
    ChangeSet changes;
    changes.everything = true;
    toy_became(changes);
    Q_EMIT current_piece_changed(current_piece_);
    Q_EMIT selection_changed(selection_);
    Q_EMIT file_changed();
    tell_modified();
    Q_EMIT standing_changed();
}

void DocumentSession::start(Toy toy, bool unsaved) {
    replace_toy(std::move(toy), {});
    if (unsaved) happened(FileEvent::recovered);
}

std::optional<FileProblem> DocumentSession::open(const QString& path) {
    auto loaded = load_document_file(path);
    if (loaded.problem) return loaded.problem;
    auto& document = loaded.document;
    FileStanding standing;
    standing.on_disk = OnDisk::same;
    standing.newer_format = document.newer;
    replace_toy(std::move(document.toy), {QFileInfo(path).absoluteFilePath(), standing, false, loaded.stamp,
                                          std::move(document.unread), std::move(document.mended)});
    return std::nullopt;
}

std::optional<FileProblem> DocumentSession::save(const QString& path, SaveOver over) {
    end_preview();
    Q_EMIT about_to_save(path);
    const auto written = write_file(path, over);
    if (written.problem) {
        happened(FileEvent::save_failed);
        return written.problem;
    }
    file_.path = QFileInfo(path).absoluteFilePath();
    file_.stamp = written.stamp;
    file_.not_yet_safe = written.not_yet_safe;
    end_merging();
    {
        const QScopedValueRollback replacing(replacing_, true);
        history_.steps().setClean();
    }
    file_.standing = after(file_.standing, FileEvent::saved);
    Q_EMIT saved();
    Q_EMIT file_changed();
    tell_modified();
    Q_EMIT standing_changed();
    remark(file_.path, written.remarks);
    return std::nullopt;
}

void DocumentSession::remark(const QString& path, const QString& words) {
    if (words.isEmpty() || remarks_made_.contains(path + words)) return;
    remarks_made_.insert(path + words);
    Q_EMIT remarked(tr("“%1” is saved. %2").arg(QFileInfo(path).fileName(), words));
}

/// The file may have been touched, or have got another name or right, and hold the same: then its stamp is
/// learnt, and it is tried again.
SavedFile DocumentSession::write_file(const QString& path, SaveOver over) {
    const bool is_own = is_same_path(path, file_.path) && !file_.stamp.sha256.isEmpty();
    if (over == SaveOver::nothing) return save_document_file(path, said_toy(), {.only_new = true});
    if (over == SaveOver::anything || !is_own) return save_document_file(path, said_toy(), {});
    constexpr int tries = 4;
    for (int attempt = 1; attempt < tries; ++attempt) {
        auto written = save_document_file(path, said_toy(), {.in_place_of = file_.stamp});
        if (!written.problem || !written.problem->was_changed) return written;
        const ReadFile now = read_whole(path, static_cast<qint64>(max_file_bytes));
        if (now.fault && now.fault->error == ENOENT)
            return save_document_file(path, said_toy(), {.only_new = true});
        if (now.fault || now.stamp.sha256 != file_.stamp.sha256) return written;
        file_.stamp = now.stamp;
    }
    return save_document_file(path, said_toy(), {.in_place_of = file_.stamp});
}

void DocumentSession::recover(Toy toy, const QString& path, const FileStamp& based_on) {
    FileStanding standing;
    standing.on_disk = path.isEmpty() ? OnDisk::never_saved : OnDisk::same;
    replace_toy(std::move(toy), {path, after(standing, FileEvent::recovered), false, based_on});
}

void DocumentSession::take_theirs(LoadedFile theirs) {
    auto& document = theirs.document;
    end_merging();
    {
        const QScopedValueRollback replacing(replacing_, true);
        if (!history_.make_step(tr("Take what another program saved"), std::move(document.toy)))
            end_preview();
        history_.steps().setClean();
    }
    end_merging();
    file_.stamp = theirs.stamp;
    file_.not_understood = std::move(document.unread);
    file_.mended = std::move(document.mended);
    FileStanding standing = after(file_.standing, FileEvent::took_theirs);
    standing.newer_format = document.newer;
    stand(standing);
}

void DocumentSession::know_file_again(const FileStamp& stamp) {
    const bool is_news = !(stamp == file_.stamp);
    file_.stamp = stamp;
    happened(FileEvent::back);
    if (is_news) Q_EMIT standing_changed();
}

void DocumentSession::follow_to(const QString& path) {
    file_.path = QFileInfo(path).absoluteFilePath();
    happened(FileEvent::renamed);
    Q_EMIT file_changed();
}

}  // namespace roundwright::app
