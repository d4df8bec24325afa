#include "app/session/studies.h"

#include <algorithm>
#include <utility>

namespace roundwright::app {
namespace {

bool has_stitches(const std::shared_ptr<const PieceStudy>& study) {
    return study && study->shape->stitched != nullptr;
}

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
    connect(&stitches_, &StitchSolver::solved, this, &Studies::take_stitches);
    connect(&stitches_, &StitchSolver::failed, this, &Studies::failed);
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

EveryStitchState Studies::every_stitch(PieceId piece) const {
    const Findings* findings = found(piece);
    if (!findings) return {};
    if (findings->wanted != 0 || findings->stitches_wanted != 0)
        return {.coming = every_stitch_ && !on_trial(piece)};
    if (has_stitches(findings->study)) return {.found = true};
    const bool is_of_it = findings->study && findings->refused_shape == findings->study->shape &&
                          findings->refused_stitches == findings->study->stitches;
    return is_of_it ? findings->refused : EveryStitchState{};
}

// --- following the toy

void Studies::clear() {
    drop_trial();
    for (auto& [piece, findings] : findings_) {
        solver_.cancel(findings.wanted);
        cancel_stitches(findings);
    }
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
    for (auto& [piece, findings] : findings_) {
        if (toy_->pieces.index_of(piece)) continue;
        solver_.cancel(findings.wanted);
        cancel_stitches(findings);
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
    cancel_stitches(findings);
    const auto stitched_before = findings.stitched;
    const auto surface_before = findings.surface;
    const auto drawn_before = findings.drawn;
    const auto shown_before = findings.shown;
    findings = std::move(*trial_);
    trial_.reset();
    findings.of = wanted;
    findings.stitched = stitched_before;
    findings.surface_wanted = findings.wanted != 0;
    if (!findings.surface) {
        findings.surface = surface_before;
        findings.drawn = drawn_before;
        findings.shown = shown_before;
        findings.last_good = findings.last_good && surface_before != nullptr;
    }
    if (findings.wanted == 0) studies_to_tell_.push_back(wanted.piece);
    ask_for_stitches(wanted.piece, findings);
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
    cancel_stitches(findings);
    findings = kept->second;
    findings.of = wanted;
    findings.stitches_wanted = 0;
    ask_for_stitches(wanted.piece, findings);
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
    if (const auto place = findings_.find(piece); place != findings_.end())
        ask_for_stitches(piece, place->second);
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
    request.every_stitch = every_stitch_;
    return request;
}

void Studies::request(Findings& findings, const PieceOfToy& of, bool study_is_right) {
    solver_.cancel(findings.wanted);
    cancel_stitches(findings);
    SolveRequest request = new_request(of);
    request.stitched_before = findings.stitched;
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
    request.stitched_before = found(current_)->stitched;
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
    if (has_stitches(result.study)) findings.stitched = result.study->shape;
    if (findings.surface_wanted && result.again && !findings.last_good) findings.shown = result.shown;
    ask_for_stitches(piece, findings);
    if (study_is_new) Q_EMIT study_ready(piece);
    if (surface_is_new) Q_EMIT surface_ready(piece);
    Q_EMIT every_stitch_changed(piece);
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

// --- every stitch

/// One that was refused is asked for again only with other stitches or another shape.
bool Studies::lacks_stitches(const Findings& findings) const {
    if (!every_stitch_ || findings.wanted != 0 || !findings.study || has_stitches(findings.study))
        return false;
    if (!findings.study->measures().converged()) return false;
    return findings.refused_shape != findings.study->shape ||
           findings.refused_stitches != findings.study->stitches;
}

StitchRequest Studies::stitch_request(Findings& findings, bool seen) {
    StitchRequest request;
    request.revision = ++last_stitch_revision_;
    request.toy = findings.of.toy;
    request.piece = findings.of.toy->pieces.index_of(findings.of.piece).value_or(0);
    request.study = findings.study;
    request.before = findings.stitched;
    request.drawn = findings.drawn;
    request.first = seen;
    if (seen && findings.shown == findings.study && !findings.last_good)
        request.wanted = {false, {.relief = Relief::shaded, .most_triangles = most_triangles_}};
    return request;
}

/// The piece on show comes first, and with its surface; the others one at a time.
void Studies::ask_for_stitches(PieceId piece, Findings& findings) {
    const bool seen = piece == current_;
    if (!lacks_stitches(findings) || (findings.stitches_wanted != 0 && findings.stitches_seen == seen))
        return;
    cancel_stitches(findings);
    StitchRequest request = stitch_request(findings, seen);
    findings.stitches_wanted = request.revision;
    findings.stitches_seen = seen;
    stitches_.post(std::move(request));
}

void Studies::cancel_stitches(Findings& findings) {
    stitches_.cancel(std::exchange(findings.stitches_wanted, 0));
}

void Studies::take_stitches(const StitchResult& result) {
    const auto place = std::ranges::find_if(
        findings_, [&result](const auto& each) { return each.second.stitches_wanted == result.revision; });
    if (place == findings_.end()) return;
    const PieceId piece = place->first;
    Findings& findings = place->second;
    findings.stitches_wanted = 0;
    if (result.found.refused()) {
        findings.refused_shape = findings.study->shape;
        findings.refused_stitches = findings.study->stitches;
        findings.refused = {.refusal = result.found.refusal, .cells = result.found.cells};
        Q_EMIT every_stitch_changed(piece);
        return;
    }
    const bool shows_study = findings.shown == findings.study;
    findings.study = findings.shaped = result.found.study;
    findings.stitched = findings.study->shape;
    const bool surface_is_new = show_stitches(findings, shows_study, result.drawn);
    Q_EMIT shape_ready(piece);
    Q_EMIT study_ready(piece);
    if (surface_is_new) Q_EMIT surface_ready(piece);
    Q_EMIT every_stitch_changed(piece);
}

/// A surface that was not made with it is of the round shape, and made again when it is wanted.
bool Studies::show_stitches(Findings& findings, bool shows_study, const Shared<SurfaceStage>& drawn) {
    if (!shows_study) return false;
    findings.shown = findings.study;
    forget_surface(findings);
    if (!drawn) return false;
    findings.drawn = drawn;
    findings.surface = {drawn, &drawn->surface};
    return true;
}

void Studies::set_every_stitch(bool wanted) {
    if (std::exchange(every_stitch_, wanted) == wanted) return;
    if (!wanted) leave_stitches();
    for (auto& [piece, findings] : findings_) ask_for_stitches(piece, findings);
    for (const auto& [piece, findings] : findings_) Q_EMIT every_stitch_changed(piece);
}

/// Everything is solved again from the round shapes, which are still there.
void Studies::leave_stitches() {
    drop_trial();
    before_preview_.clear();
    for (auto& [piece, findings] : findings_) {
        cancel_stitches(findings);
        findings.stitched = nullptr;
        if (!has_stitches(findings.study) && findings.wanted == 0) continue;
        if (findings.study) {
            const bool shows_study = findings.shown == findings.study;
            findings.study = std::make_shared<const PieceStudy>(as_round_solved(*findings.study));
            if (shows_study) findings.shown = findings.study;
        }
        request(findings, {toy_, piece}, false);
    }
}

}  // namespace roundwright::app
