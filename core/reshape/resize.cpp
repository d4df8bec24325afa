#include "core/reshape/resize.h"

#include <algorithm>
#include <utility>

#include "core/reshape/fit_rounds.h"

namespace roundwright {
namespace {

/// What is worked smaller by s and missed its size by d misses d / s made as large again, and half a round
/// more for the way back: within one round up to d = s / 2 rounds.
bool is_sure_to_return(const Reshaped& made, const Gauge& gauge) {
    const double s =
        std::min({1.0, made.wanted.width_mm / made.before.width_mm, height_ratio(made.wanted, made.before)});
    return half_rounds_off(made.reached(), made.wanted, gauge) <= s;
}

Reshaped unchanged(const PieceForm& form, Reshaped result) {
    result.code = ReshapeCode::unchanged;
    result.form = form;
    return result;
}

// Of the numbers of rounds next to an outline's length, the one whose fabric is sound and whose shape is
// nearest to its size.
Fit cut_as_drawn(const FitProblem& problem) {
    Fit best;
    for (const int rounds : nearest_numbers_of_rounds(problem, problem.scale)) {
        const Fit fit = cut_rounds(problem, rounds, nullptr);
        const auto merit = [](const Fit& f) { return std::pair(f.flaws, f.miss); };
        if (fit.found && (!best.found || merit(fit) < merit(best))) best = fit;
    }
    return best;
}

Reshaped fitted(const ReshapeTask& task, bool as_drawn, Reshaped result) {
    const FitProblem& problem = task.problem;
    const Fit fit = as_drawn ? cut_as_drawn(problem) : fit_rounds(problem);
    if (problem.stop.stop_requested()) {
        result.code = ReshapeCode::cancelled;
        return result;
    }
    if (!fit.found) {
        result.code = ReshapeCode::unusable_piece;
        return result;
    }
    FittedPiece made = fitted_piece(task.base, problem, fit);
    result.form = std::move(made.form);
    result.rewritten = std::move(made.rewritten);
    result.scale = fit.scale;
    result.code = verdict(result.reached(), result.wanted, problem.gauge);
    return result;
}

constexpr double half_a_round = 1;

ReshapeTask with_room(ReshapeTask task) {
    task.problem.near_enough = half_a_round;
    return task;
}

bool returns_within_a_round(const Reshaped& made, const ReshapeOptions& options) {
    const Gauge& gauge = made.form.gauge;
    if (is_sure_to_return(made, gauge)) return true;
    Target back;
    back.width_mm = made.reached().width_mm * made.before.width_mm / made.wanted.width_mm;
    back.height_mm = made.reached().height_mm / height_ratio(made.wanted, made.before);
    const ReshapeTask task = reshape_task(made.form, back, options);
    if (task.code != ReshapeCode::met) return task.code == ReshapeCode::unchanged;
    const auto comes_back = [&](const ReshapeTask& way) {
        const Reshaped returned = fitted(way, false, {});
        return has_piece(returned.code) && half_rounds_off(returned.reached(), made.before, gauge) <= 2;
    };
    return comes_back(task) && comes_back(with_room(task));
}

// Tidy rounds within half a round of the size, if the piece can be brought back from there; else as near as
// takes it back.
Reshaped fitted_to_return(const ReshapeTask& task, const ReshapeOptions& options, const Reshaped& result) {
    if (options.tidiness > 0) {
        Reshaped made = fitted(with_room(task), false, result);
        if (made.code == ReshapeCode::met && returns_within_a_round(made, options)) return made;
    }
    Reshaped made = fitted(task, false, result);
    if (has_piece(made.code)) made.returns_within_a_round = returns_within_a_round(made, options);
    return made;
}

}  // namespace

Reshaped resize(const PieceForm& form, const Target& target, const ReshapeOptions& options) {
    const ReshapeTask task = reshape_task(form, target, options);
    Reshaped result;
    result.code = task.code;
    result.before = form.size();
    result.wanted = task.wanted;
    if (task.code == ReshapeCode::unchanged) return unchanged(form, std::move(result));
    if (task.code != ReshapeCode::met) return result;
    if (!target.silhouette && !target.gauge) return fitted_to_return(task, options, result);
    return fitted(task, is_as_drawn(target, options), std::move(result));
}

Reshaped resize(const Toy& toy, std::size_t piece, const Target& target, const ReshapeOptions& options) {
    if (piece >= toy.pieces.size()) return {};
    return resize(piece_form(toy.pieces[piece], gauge_of(toy), nullptr, options.stop), target, options);
}

}  // namespace roundwright
