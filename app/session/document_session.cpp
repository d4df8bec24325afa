#include "app/session/document_session.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include <QFileInfo>

#include "core/checks/check_said_numbers.h"

namespace roundwright::app {

DocumentSession::DocumentSession(QObject* parent) : QObject(parent) {
    connect(&solver_, &BackgroundSolver::solved, this, &DocumentSession::take);
    connect(&solver_, &BackgroundSolver::failed, this, &DocumentSession::refuse);
    connect(&solver_, &BackgroundSolver::busy_changed, this, &DocumentSession::solving_changed);
    connect(&undo_, &QUndoStack::cleanChanged, this, [this] { Q_EMIT modified_changed(modified()); });
}

DocumentSession::~DocumentSession() { undo_.disconnect(this); }

const Piece* DocumentSession::piece() const {
    return current_piece_ < 0 ? nullptr : &toy_.pieces[static_cast<std::size_t>(current_piece_)];
}

void DocumentSession::set_current_piece(int piece) {
    piece = std::clamp(piece, -1, static_cast<int>(toy_.pieces.size()) - 1);
    if (piece == current_piece_) return;
    drop_trial();
    current_piece_ = piece;
    end_merging();
    Q_EMIT current_piece_changed(piece);
    select_rounds({});
    request_current_surface();
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
    if (read_only_) {
        refuse(
            tr("This file was written by a newer Roundwright, so it is read-only. Save it under another name "
               "to change it."));
    }
    return !read_only_;
}

bool DocumentSession::edit(const QString& text, Toy after, const QString& merge_key) {
    if (!may_edit()) return false;
    close_preview();
    after = with_words_remembered(toy_, std::move(after));
    ToyDelta delta(toy_, after);
    if (delta.empty()) return false;
    push(text, std::move(delta), merge_key);
    return true;
}

bool DocumentSession::edit(const QString& text, const std::function<Toy(Toy)>& change,
                           const QString& merge_key) {
    close_preview();
    return edit(text, change(toy_), merge_key);
}

bool DocumentSession::edit_piece(const QString& text, const std::function<void(Piece&)>& change,
                                 const QString& merge_key) {
    if (!piece()) return false;
    close_preview();
    Toy after = toy_;
    change(after.pieces[static_cast<std::size_t>(current_piece_)]);
    return edit(text, std::move(after), merge_key);
}

void DocumentSession::push(const QString& text, ToyDelta delta, const QString& merge_key) {
    const auto key =
        merge_key.isEmpty() ? QString() : merge_key + QLatin1Char('#') + QString::number(merge_epoch_);
    pushing_ = true;
    undo_.push(new EditCommand(*this, text, std::move(delta), key));
    pushing_ = false;
}

void DocumentSession::apply_delta(const ToyDelta& delta) {
    if (!pushing_) close_preview();
    delta.apply(toy_);
    toy_became(delta.changes());
    if (!pushing_) reveal(delta.changes());
}

void DocumentSession::revert_delta(const ToyDelta& delta) {
    close_preview();
    delta.revert(toy_);
    toy_became(delta.reversed_changes());
    reveal(delta.reversed_changes());
}

/// Undo and redo bring what they changed back into sight.
void DocumentSession::reveal(const ChangeSet& changes) {
    end_merging();
    if (changes.pieces.empty()) return;
    set_current_piece(changes.pieces.first);
    if (!changes.pieces.one_for_one() || changes.rounds.empty()) return;
    std::vector<int> rounds(static_cast<std::size_t>(std::max(changes.rounds.inserted, 1)));
    std::iota(rounds.begin(), rounds.end(), changes.rounds.first);
    if (piece() && rounds.front() >= static_cast<int>(piece()->rounds.size())) --rounds.front();
    select_rounds(std::move(rounds));
}

std::uint64_t DocumentSession::begin_preview() {
    close_preview();
    if (!may_edit()) return 0;
    preview_base_ = toy_;
    return ++preview_ticket_;
}

void DocumentSession::show_preview(std::uint64_t ticket, Toy toy) {
    if (!preview_base_ || ticket != preview_ticket_) return;
    const ToyDelta delta(toy_, toy);
    if (delta.empty()) return;
    toy_ = std::move(toy);
    toy_became(delta.changes());
}

bool DocumentSession::commit_preview(std::uint64_t ticket, const QString& text) {
    if (!preview_base_ || ticket != preview_ticket_) return false;
    Toy after = toy_;
    roll_back_preview(ticket);
    return edit(text, std::move(after));
}

void DocumentSession::roll_back_preview(std::uint64_t ticket) {
    if (!preview_base_ || ticket != preview_ticket_) return;
    Toy base = std::move(*preview_base_);
    preview_base_.reset();
    const ToyDelta delta(toy_, base);
    if (delta.empty()) return;
    toy_ = std::move(base);
    toy_became(delta.changes());
}

void DocumentSession::close_preview() { roll_back_preview(preview_ticket_); }

void DocumentSession::try_out(Toy toy) {
    if (current_piece_ < 0 || toy.pieces.size() <= static_cast<std::size_t>(current_piece_)) return;
    solver_.cancel(trial_.wanted);
    SolveRequest request = new_request(current_piece_, std::make_shared<const Toy>(std::move(toy)));
    trial_.wanted = request.revision;
    const auto& results = results_[static_cast<std::size_t>(current_piece_)];
    request.before = trial_.study ? StudiedPiece{trial_.study, trial_.shown, trial_.drawn}
                                  : StudiedPiece{results.study, results.shown, results.drawn};
    request.checks_wanted = false;
    solver_.post(std::move(request));
}

void DocumentSession::end_trial() {
    const bool shown = shows_trial();
    drop_trial();
    if (shown) Q_EMIT surface_ready(current_piece_, surface(current_piece_), shown_study(current_piece_));
}

void DocumentSession::drop_trial() {
    solver_.cancel(trial_.wanted);
    trial_ = {};
}

/// Until the shape of the toy as it is now is there.
void DocumentSession::keep_trial_shown() {
    if (!shows_trial()) return;
    auto& results = results_[static_cast<std::size_t>(current_piece_)];
    results.surface = trial_.surface;
    results.drawn = trial_.drawn;
    results.shown = trial_.shown;
}

void DocumentSession::toy_became(const ChangeSet& changes) {
    if (changes.touches_piece(current_piece_)) keep_trial_shown();
    drop_trial();
    follow_pieces(changes);
    const int piece_before = current_piece_;
    const auto selection_before = selection_;
    keep_places_valid();
    const bool another_piece = current_piece_ != piece_before;
    const bool another_selection = selection_ != selection_before;
    Q_EMIT toy_changed(changes);
    if (another_piece) Q_EMIT current_piece_changed(current_piece_);
    if (another_selection) Q_EMIT selection_changed(selection_);
    request(changes);
}

void DocumentSession::keep_places_valid() {
    const int pieces = static_cast<int>(toy_.pieces.size());
    current_piece_ = pieces == 0 ? -1 : std::clamp(current_piece_, 0, pieces - 1);
    const int rounds = piece() ? static_cast<int>(piece()->rounds.size()) : 0;
    std::erase_if(selection_, [&](int round) { return round >= rounds; });
}

// --- what is computed

std::shared_ptr<const PieceStudy> DocumentSession::study(int piece) const {
    const auto index = static_cast<std::size_t>(piece);
    return index < results_.size() ? results_[index].study : nullptr;
}

std::shared_ptr<const PieceStudy> DocumentSession::shown_study(int piece) const {
    if (on_trial(piece)) return trial_.shown;
    const auto index = static_cast<std::size_t>(piece);
    return index < results_.size() ? results_[index].shown : nullptr;
}

std::shared_ptr<const StitchSurface> DocumentSession::surface(int piece) const {
    if (on_trial(piece)) return trial_.surface;
    const auto index = static_cast<std::size_t>(piece);
    return index < results_.size() ? results_[index].surface : nullptr;
}

bool DocumentSession::is_up_to_date(int piece) const {
    const auto index = static_cast<std::size_t>(piece);
    return index < results_.size() && results_[index].wanted == 0;
}

bool DocumentSession::shows_last_good_shape(int piece) const {
    const auto index = static_cast<std::size_t>(piece);
    return index < results_.size() && results_[index].last_good;
}

void DocumentSession::set_shows_unstuffed(bool unstuffed) {
    if (std::exchange(shows_unstuffed_, unstuffed) != unstuffed) surfaces_are_stale();
}

void DocumentSession::set_most_triangles(std::size_t triangles) {
    if (std::exchange(most_triangles_, triangles) != triangles) surfaces_are_stale();
}

void DocumentSession::surfaces_are_stale() {
    drop_trial();
    for (auto& results : results_) {
        results.surface.reset();
        results.drawn.reset();
        results.surface_wanted = false;
    }
    request_current_surface();
}

/// Results stay with their pieces when pieces come and go; those of changed pieces stay as a warm start.
void DocumentSession::follow_pieces(const ChangeSet& changes) {
    if (changes.everything) {
        for (const auto& results : results_) solver_.cancel(results.wanted);
        results_.assign(toy_.pieces.size(), {});
        return;
    }
    if (!changes.piece_list()) return;
    const auto first = results_.begin() + changes.pieces.first;
    for (auto it = first; it != first + changes.pieces.removed; ++it) solver_.cancel(it->wanted);
    results_.erase(first, first + changes.pieces.removed);
    results_.insert(results_.begin() + changes.pieces.first,
                    static_cast<std::size_t>(changes.pieces.inserted), PieceResults{});
}

void DocumentSession::request(const ChangeSet& changes) {
    if (!changes.everything && !changes.materials && changes.pieces.empty()) return;
    const auto snapshot = std::make_shared<const Toy>(toy_);
    for (int piece = 0; piece < static_cast<int>(toy_.pieces.size()); ++piece) {
        if (changes.materials || changes.touches_piece(piece)) request_piece(piece, snapshot, false);
    }
    request_current_surface();
}

SolveRequest DocumentSession::new_request(int piece, std::shared_ptr<const Toy> toy) {
    SolveRequest request;
    request.revision = ++last_revision_;
    request.toy = std::move(toy);
    request.piece = static_cast<std::size_t>(piece);
    request.surface_wanted = request.urgent = piece == current_piece_;
    request.unstuffed = shows_unstuffed_;
    request.most_triangles = most_triangles_;
    return request;
}

void DocumentSession::request_piece(int piece, const std::shared_ptr<const Toy>& snapshot,
                                    bool study_is_right) {
    auto& results = results_[static_cast<std::size_t>(piece)];
    solver_.cancel(results.wanted);
    SolveRequest request = new_request(piece, snapshot);
    results.wanted = request.revision;
    results.surface_wanted = request.surface_wanted;
    request.before = {results.study, results.shown, results.drawn};
    if (study_is_right) request.known = results.study;
    if (!request.surface_wanted) {
        results.surface.reset();
        results.drawn.reset();
    }
    solver_.post(std::move(request));
}

/// Only the piece on show needs a surface; another's is made when it comes on show.
void DocumentSession::request_current_surface() {
    if (current_piece_ < 0) return;
    const auto& results = results_[static_cast<std::size_t>(current_piece_)];
    if (results.wanted != 0 ? results.surface_wanted : results.surface != nullptr) {
        if (results.wanted == 0) Q_EMIT surface_ready(current_piece_, results.surface, results.shown);
        return;
    }
    const bool study_is_right = results.wanted == 0 && results.study != nullptr;
    request_piece(current_piece_, std::make_shared<const Toy>(toy_), study_is_right);
}

void DocumentSession::take(const SolveResult& result) {
    if (result.revision == trial_.wanted) return take_trial(result);
    const auto found = std::ranges::find(results_, result.revision, &PieceResults::wanted);
    if (found == results_.end()) return;
    const int piece = static_cast<int>(found - results_.begin());
    if (!result.has_checks) {
        if (found->surface_wanted) take_surface(piece, result);
        return;
    }
    found->wanted = 0;
    if (!result.study) {
        found->study.reset();
        return;
    }
    const bool study_is_new = found->study != result.study;
    const bool surface_is_new = found->surface_wanted && !result.again;
    found->study = result.study;
    if (found->surface_wanted && !surface_is_new && !found->last_good) found->shown = result.shown;
    if (study_is_new) Q_EMIT study_ready(piece, result.study);
    if (surface_is_new) take_surface(piece, result);
}

void DocumentSession::take_trial(const SolveResult& result) {
    trial_.wanted = 0;
    trial_.study = result.study;
    const bool good = result.surface && result.shown->measures().converged();
    if (!good) return;  // the last one that was good stays
    trial_.surface = result.surface;
    trial_.drawn = result.drawn;
    trial_.shown = result.shown;
    Q_EMIT surface_ready(current_piece_, trial_.surface, trial_.shown);
}

void DocumentSession::take_surface(int piece, const SolveResult& result) {
    auto& results = results_[static_cast<std::size_t>(piece)];
    const bool good = result.surface && result.shown->measures().converged();
    results.last_good = !good && results.surface != nullptr;
    if (results.last_good) return;
    results.surface = result.surface;
    results.drawn = result.drawn;
    results.shown = result.shown;
    Q_EMIT surface_ready(piece, results.surface, results.shown);
}

// --- its file

bool DocumentSession::modified() const { return unsaved_from_start_ || !undo_.isClean(); }

void DocumentSession::replace_toy(Toy toy, const QString& path, bool read_only) {
    close_preview();
    const bool was_modified = modified();
    toy_ = std::move(toy);
    path_ = path;
    read_only_ = read_only;
    unsaved_from_start_ = false;
    undo_.clear();
    current_piece_ = toy_.pieces.empty() ? -1 : 0;
    selection_.clear();
    ChangeSet changes;
    changes.everything = true;
    toy_became(changes);
    Q_EMIT current_piece_changed(current_piece_);
    Q_EMIT selection_changed(selection_);
    Q_EMIT file_changed();
    if (was_modified) Q_EMIT modified_changed(modified());
}

void DocumentSession::start(Toy toy, bool unsaved) {
    replace_toy(std::move(toy), {}, false);
    if (!unsaved) return;
    unsaved_from_start_ = true;
    Q_EMIT modified_changed(true);
}

std::optional<FileProblem> DocumentSession::open(const QString& path) {
    auto loaded = load_document_file(path);
    if (loaded.problem) return loaded.problem;
    replace_toy(std::move(loaded.document.toy), QFileInfo(path).absoluteFilePath(), loaded.document.newer);
    left_out_ = std::move(loaded.document.unread);
    return std::nullopt;
}

std::optional<FileProblem> DocumentSession::save(const QString& path) {
    close_preview();
    if (auto problem = save_document_file(path, toy_)) return problem;
    const bool was_modified = modified();
    path_ = QFileInfo(path).absoluteFilePath();
    read_only_ = false;
    unsaved_from_start_ = false;
    end_merging();
    undo_.setClean();
    Q_EMIT file_changed();
    if (was_modified) Q_EMIT modified_changed(false);
    return std::nullopt;
}

void DocumentSession::recover(Toy toy, const QString& path) {
    start(std::move(toy), true);
    path_ = path;
    Q_EMIT file_changed();
}

}  // namespace roundwright::app
