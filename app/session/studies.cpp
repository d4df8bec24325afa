#include "app/session/studies.h"

#include <algorithm>
#include <utility>

namespace roundwright::app {
namespace {

bool is_good(const SolveResult& result) { return result.surface && result.shown->measures().converged(); }

/// What a study and a surface read of a toy besides the piece.
bool same_materials(const Toy& a, const Toy& b) {
    return &a == &b || (a.hook_mm == b.hook_mm && a.gauge == b.gauge && a.yarns == b.yarns);
}

/// Takes what was found, unless it did not converge: then the last good shape stays.
void take_surface(Findings& findings, const SolveResult& result) {
    findings.last_good = !is_good(result) && findings.surface != nullptr;
    if (findings.last_good) return;
    findings.surface = result.surface;
    findings.drawn = result.drawn;
    findings.shown = result.shown;
}

void forget_surface(Findings& findings) {
    findings.surface.reset();
    findings.drawn.reset();
}

StudiedPiece work_before(const Findings& findings) {
    return {findings.study, findings.shown, findings.drawn};
}

}  // namespace

bool PieceOfToy::gives_the_same_as(const PieceOfToy& other) const {
    if (toy == nullptr || other.toy == nullptr || piece != other.piece) return false;
    const auto here = toy->pieces.index_of(piece);
    const auto there = other.toy->pieces.index_of(piece);
    return here && there && same_piece(toy->pieces, *here, other.toy->pieces, *there) &&
           same_materials(*toy, *other.toy);
}

Studies::Studies(QObject* parent) : QObject(parent) {
    connect(&solver_, &BackgroundSolver::solved, this, &Studies::take);
    connect(&solver_, &BackgroundSolver::failed, this, &Studies::failed);
    connect(&solver_, &BackgroundSolver::busy_changed, this, &Studies::busy_changed);
}

// --- what is known

const Findings* Studies::found(PieceId piece) const {
    const auto place = findings_.find(piece);
    return place == findings_.end() ? nullptr : &place->second;
}

std::shared_ptr<const PieceStudy> Studies::study(PieceId piece) const {
    const Findings* findings = found(piece);
    return findings ? findings->study : nullptr;
}

std::shared_ptr<const PieceStudy> Studies::shown_study(PieceId piece) const {
    const Findings* findings = on_trial(piece) ? &*trial_ : found(piece);
    return findings ? findings->shown : nullptr;
}

std::shared_ptr<const StitchSurface> Studies::surface(PieceId piece) const {
    const Findings* findings = on_trial(piece) ? &*trial_ : found(piece);
    return findings ? findings->surface : nullptr;
}

bool Studies::is_up_to_date(PieceId piece) const {
    const Findings* findings = found(piece);
    return findings && findings->wanted == 0;
}

std::shared_ptr<const PieceStudy> Studies::shape_study(PieceId piece) const {
    const Findings* findings = found(piece);
    return findings ? findings->shaped : nullptr;
}

bool Studies::shape_is_known(PieceId piece) const {
    const Findings* findings = found(piece);
    return findings && findings->shape_known;
}

bool Studies::shows_last_good_shape(PieceId piece) const {
    const Findings* findings = found(piece);
    return findings && findings->last_good;
}

// --- following the toy

void Studies::clear() {
    drop_trial();
    for (const auto& [piece, findings] : findings_) solver_.cancel(findings.wanted);
    findings_.clear();
    before_preview_.clear();
    studies_to_tell_.clear();
    surface_to_tell_ = false;
}

void Studies::follow(Toy toy, PieceId current) {
    toy_ = std::make_shared<const Toy>(std::move(toy));
    const bool another = std::exchange(current_, current) != current;
    if (another) drop_trial();
    forget_pieces_gone();
    for (std::size_t i = 0; i < toy_->pieces.size(); ++i) bring_up_to_date(toy_->pieces.id(i));
    if (!request_missing_surface() && another) surface_to_tell_ = true;
}

void Studies::forget_pieces_gone() {
    for (const auto& [piece, findings] : findings_) {
        if (!toy_->pieces.index_of(piece)) solver_.cancel(findings.wanted);
    }
    std::erase_if(findings_, [this](const auto& each) { return !toy_->pieces.index_of(each.first); });
    graphs_.keep_only(toy_->pieces);
}

void Studies::bring_up_to_date(PieceId piece) {
    Findings& findings = findings_[piece];
    const PieceOfToy wanted{toy_, piece};
    if (findings.of.gives_the_same_as(wanted)) {
        findings.of = wanted;
        return;
    }
    if (piece == current_ && take_over_trial(findings, wanted)) return;
    if (piece == current_) leave_trial_on_show(findings);
    if (!take_up_again(findings, wanted)) request(findings, wanted, false);
}

/// What was tried out was just said: what is known of it, or on its way, is the piece's own.
bool Studies::take_over_trial(Findings& findings, const PieceOfToy& wanted) {
    if (!trial_ || !trial_->of.gives_the_same_as(wanted)) return false;
    solver_.cancel(findings.wanted);
    const auto surface_before = findings.surface;
    const auto drawn_before = findings.drawn;
    const auto shown_before = findings.shown;
    findings = std::move(*trial_);
    trial_.reset();
    findings.of = wanted;
    findings.surface_wanted = findings.wanted != 0;
    if (!findings.surface) {
        findings.surface = surface_before;
        findings.drawn = drawn_before;
        findings.shown = shown_before;
        findings.last_good = findings.last_good && surface_before != nullptr;
    }
    if (findings.wanted == 0) studies_to_tell_.push_back(wanted.piece);
    return true;
}

/// Until the shape of the toy as it is now is there.
void Studies::leave_trial_on_show(Findings& findings) {
    if (shows_trial()) {
        findings.surface = trial_->surface;
        findings.drawn = trial_->drawn;
        findings.shown = trial_->shown;
    }
    drop_trial();
}

/// A preview was given up, and what was known before it is right again.
bool Studies::take_up_again(Findings& findings, const PieceOfToy& wanted) {
    const auto kept = before_preview_.find(wanted.piece);
    if (kept == before_preview_.end() || !kept->second.of.gives_the_same_as(wanted)) return false;
    solver_.cancel(findings.wanted);
    findings = kept->second;
    findings.of = wanted;
    studies_to_tell_.push_back(wanted.piece);
    surface_to_tell_ = surface_to_tell_ || wanted.piece == current_;
    return true;
}

void Studies::tell() {
    for (const PieceId piece : std::exchange(studies_to_tell_, {})) Q_EMIT study_ready(piece);
    if (std::exchange(surface_to_tell_, false) && is_up_to_date(current_)) Q_EMIT surface_ready(current_);
}

void Studies::show_piece(PieceId piece) {
    drop_trial();
    current_ = piece;
    const Findings* findings = found(piece);
    surface_to_tell_ = !request_missing_surface() && findings && findings->wanted == 0;
}

void Studies::keep_for_after_preview() {
    before_preview_ = findings_;
    std::erase_if(before_preview_, [](const auto& each) { return each.second.wanted != 0; });
}

// --- asking

SolveRequest Studies::new_request(const PieceOfToy& of) {
    SolveRequest request;
    request.revision = ++last_revision_;
    request.toy = of.toy;
    request.piece = of.toy->pieces.index_of(of.piece).value_or(0);
    request.graph = graphs_.of(of.toy->pieces, request.piece);
    request.surface_wanted = request.urgent = of.piece == current_;
    request.unstuffed = shows_unstuffed_;
    request.most_triangles = most_triangles_;
    return request;
}

void Studies::request(Findings& findings, const PieceOfToy& of, bool study_is_right) {
    solver_.cancel(findings.wanted);
    SolveRequest request = new_request(of);
    findings.of = of;
    findings.wanted = request.revision;
    findings.surface_wanted = request.surface_wanted;
    request.before = work_before(findings);
    if (study_is_right) request.known = findings.study;
    findings.shape_known = study_is_right;
    findings.shaped = study_is_right ? findings.study : nullptr;
    if (!request.surface_wanted) forget_surface(findings);
    solver_.post(std::move(request));
}

/// Only the piece on show needs a surface; another's is made when it comes on show. False: it is there, or on
/// its way already.
bool Studies::request_missing_surface() {
    const auto place = findings_.find(current_);
    if (place == findings_.end()) return false;
    Findings& findings = place->second;
    if (findings.wanted != 0 ? findings.surface_wanted : findings.surface != nullptr) return false;
    request(findings, {toy_, current_}, findings.wanted == 0 && findings.study != nullptr);
    return true;
}

void Studies::set_shows_unstuffed(bool unstuffed) {
    if (std::exchange(shows_unstuffed_, unstuffed) != unstuffed) surfaces_are_stale();
}

void Studies::set_most_triangles(std::size_t triangles) {
    if (std::exchange(most_triangles_, triangles) != triangles) surfaces_are_stale();
}

void Studies::surfaces_are_stale() {
    drop_trial();
    for (auto* all : {&findings_, &before_preview_}) {
        for (auto& [piece, findings] : *all) {
            forget_surface(findings);
            findings.surface_wanted = false;
        }
    }
    request_missing_surface();
}

// --- trying out

void Studies::try_out(Toy toy) {
    if (!toy.pieces.index_of(current_) || !found(current_)) return;
    const PieceOfToy wanted{std::make_shared<const Toy>(std::move(toy)), current_};
    if (trial_ && trial_->of.gives_the_same_as(wanted)) return;
    if (!trial_) trial_.emplace();
    solver_.cancel(trial_->wanted);
    SolveRequest request = new_request(wanted);
    trial_->of = wanted;
    trial_->wanted = request.revision;
    trial_->shape_known = false;
    request.before = work_before(trial_->study ? *trial_ : *found(current_));
    solver_.post(std::move(request));
}

void Studies::end_trial() {
    const bool shown = shows_trial();
    drop_trial();
    if (shown) Q_EMIT surface_ready(current_);
}

void Studies::drop_trial() {
    if (trial_) solver_.cancel(trial_->wanted);
    trial_.reset();
}

// --- answers

void Studies::take(const SolveResult& result) {
    if (trial_ && result.revision == trial_->wanted) return take_trial(result);
    const auto place = std::ranges::find_if(
        findings_, [&result](const auto& each) { return each.second.wanted == result.revision; });
    if (place == findings_.end()) return;
    const PieceId piece = place->first;
    Findings& findings = place->second;
    const bool surface_is_there = findings.surface_wanted && !result.again && result.study;
    if (surface_is_there) take_surface(findings, result);
    const bool surface_is_new = surface_is_there && !findings.last_good;
    findings.shaped = result.study;
    findings.shape_known = true;
    Q_EMIT shape_ready(piece);
    if (!result.has_checks) {
        if (surface_is_new) Q_EMIT surface_ready(piece);
        return;
    }
    findings.wanted = 0;
    const bool study_is_new = findings.study != result.study;
    findings.study = result.study;
    if (!result.study) return;
    if (findings.surface_wanted && result.again && !findings.last_good) findings.shown = result.shown;
    if (study_is_new) Q_EMIT study_ready(piece);
    if (surface_is_new) Q_EMIT surface_ready(piece);
}

void Studies::take_trial(const SolveResult& result) {
    if (result.has_checks) trial_->wanted = 0;
    trial_->study = trial_->shaped = result.study;
    trial_->shape_known = true;
    if (result.again) {
        if (!trial_->last_good) trial_->shown = result.shown;
        return;
    }
    trial_->last_good = !is_good(result);
    if (trial_->last_good) return;
    take_surface(*trial_, result);
    Q_EMIT surface_ready(current_);
}

}  // namespace roundwright::app
