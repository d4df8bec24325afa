#include "core/reshape/resize.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>
#include <utility>

#include "core/base/limits.h"

namespace roundwright {
namespace {

constexpr std::array<std::pair<ReshapeCode, std::string_view>, 12> code_names{{
    {ReshapeCode::met, "met"},
    {ReshapeCode::unchanged, "unchanged"},
    {ReshapeCode::width_not_met, "width_not_met"},
    {ReshapeCode::height_not_met, "height_not_met"},
    {ReshapeCode::size_not_met, "size_not_met"},
    {ReshapeCode::nothing_wanted, "nothing_wanted"},
    {ReshapeCode::conflicting_target, "conflicting_target"},
    {ReshapeCode::unusable_target, "unusable_target"},
    {ReshapeCode::too_small, "too_small"},
    {ReshapeCode::too_large, "too_large"},
    {ReshapeCode::unusable_piece, "unusable_piece"},
    {ReshapeCode::cancelled, "cancelled"},
}};

constexpr double same_size = 1e-9;
// Drawn closed as it was begun: the last round is as far from its pole as the first, and has as many
// stitches.
constexpr double fan_of_an_outline = 1;
constexpr double nearest_sought = 0.8;  // of half a round: what is worked larger again adds to the miss

bool is_positive(double value) { return std::isfinite(value) && value > 0; }
bool is_positive(const Gauge& gauge) {
    return is_positive(gauge.stitch_width_mm) && is_positive(gauge.round_height_mm);
}

bool is_sound(const Target& target) {
    const auto sound = [](const std::optional<double>& value) { return !value || is_positive(*value); };
    return sound(target.width_mm) && sound(target.height_mm) && sound(target.circumference_mm) &&
           sound(target.scale) && (!target.gauge || is_positive(*target.gauge)) &&
           (!target.silhouette || is_usable(*target.silhouette));
}

bool conflicts(const Target& target) {
    const bool sized = target.width_mm || target.height_mm || target.circumference_mm;
    return (target.scale && sized) || (target.circumference_mm && target.width_mm);
}

bool is_empty(const Target& target) {
    return !target.width_mm && !target.height_mm && !target.circumference_mm && !target.scale &&
           !target.gauge && !target.silhouette;
}

Size own_size(const PieceForm& form, const Target& target) {
    if (!target.silhouette) return form.size();
    return {width_mm(*target.silhouette), height_mm(*target.silhouette)};
}

bool is_same(const Size& a, const Size& b) {
    return std::abs(a.width_mm - b.width_mm) <= same_size * a.width_mm &&
           std::abs(a.height_mm - b.height_mm) <= same_size * std::max(a.height_mm, a.width_mm);
}

// A flat piece has no height to speak of that could be scaled.
double height_ratio(const Size& wanted, const Size& own) {
    return own.height_mm > 0.01 * own.width_mm ? wanted.height_mm / own.height_mm
                                               : wanted.width_mm / own.width_mm;
}

StitchProfile profile_of(const PieceForm& form, const Target& target, const Gauge& gauge) {
    if (!target.silhouette) return stitch_profile(form.problem, form.gauge.stitch_width_mm);
    const Silhouette& outline = *target.silhouette;
    return stitch_profile(outline, evenly_stretched(outline, form.piece.area_stretch, gauge),
                          gauge.stitch_width_mm);
}

ProfileScale first_scale(const PieceForm& form, const Target& target, const Gauge& gauge,
                         const Size& wanted) {
    const Size own = own_size(form, target);
    ProfileScale scale{wanted.width_mm / own.width_mm, height_ratio(wanted, own)};
    if (target.silhouette) return scale;
    scale.around *= form.gauge.stitch_width_mm / gauge.stitch_width_mm;
    scale.along *= form.gauge.round_height_mm / gauge.round_height_mm;
    return scale;
}

// A free outline may close an end that the piece has open, or open one that it has closed.
void set_ends(Piece& piece, const StitchProfile& profile) {
    const bool ring = std::holds_alternative<MagicRing>(piece.start);
    if (profile.ring_start && !ring) piece.start = MagicRing{};
    if (!profile.ring_start && ring) piece.start = OpenTube{};
    piece.end = profile.drawn_closed ? End::drawn_closed : End::left_open;
}

PieceForm with_ends(const PieceForm& form, const StitchProfile& profile) {
    PieceForm changed = form;
    set_ends(changed.piece, profile);
    changed.problem.first = profile.ring_start ? MeridianEnd::pole : MeridianEnd::open;
    changed.problem.first_fan_height_mm = 0;
    changed.problem.equivalent_round = changed.piece.joining == Joining::rows;
    return changed;
}

// As far off as half a round is, seen from the old piece. Whoever wants very tidy rounds more than likeness
// is content with any size that is within tolerance.
double near_enough(const Size& own, const Size& wanted, const Target& target, double tidiness) {
    if (target.silhouette) return 1;
    const double share =
        std::min({nearest_sought, wanted.width_mm / own.width_mm, height_ratio(wanted, own)});
    return std::max(share, 2 * tidiness - 1);
}

bool is_too_small(const FitProblem& problem) {
    const auto& stitches = problem.profile.stitches;
    const double most = *std::max_element(stitches.begin(), stitches.end()) * problem.scale.around;
    return most < 2.5 || rounds_wanted(problem.profile, problem.scale, problem.fan_rounds) < 0.5;
}

bool is_too_large(const FitProblem& problem) {
    const double rounds = rounds_wanted(problem.profile, problem.scale, problem.fan_rounds);
    if (!(rounds <= double(max_rounds_per_piece))) return true;
    const auto places =
        places_of_rounds(problem.profile, problem.scale, problem.fan_rounds, std::max(1, int(rounds)), 0);
    const auto wanted = wanted_stitches(problem.profile, problem.scale, places, 1e9);
    return !(std::accumulate(wanted.begin(), wanted.end(), 0.0) <= 0.95 * double(max_stitches_per_piece));
}

bool is_as_drawn(const Target& target, const ReshapeOptions& options) {
    return options.as_drawn && target.silhouette;
}

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

// Of the numbers of rounds next to an outline's length, the one whose shape is nearest to its size.
Fit cut_as_drawn(const FitProblem& problem) {
    Fit best;
    for (const int rounds : nearest_numbers_of_rounds(problem, problem.scale)) {
        const Fit fit = cut_rounds(problem, rounds, nullptr);
        if (fit.found && (!best.found || fit.miss < best.miss)) best = fit;
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

bool returns_within_a_round(const Reshaped& made, const ReshapeOptions& options) {
    const Gauge& gauge = made.form.gauge;
    if (is_sure_to_return(made, gauge)) return true;
    Target back;
    back.width_mm = made.reached().width_mm * made.before.width_mm / made.wanted.width_mm;
    back.height_mm = made.reached().height_mm / height_ratio(made.wanted, made.before);
    const ReshapeTask task = reshape_task(made.form, back, options);
    if (task.code != ReshapeCode::met) return task.code == ReshapeCode::unchanged;
    const Reshaped returned = fitted(task, false, {});
    return has_piece(returned.code) && half_rounds_off(returned.reached(), made.before, gauge) <= 2;
}

}  // namespace

std::string_view reshape_code_name(ReshapeCode code) {
    for (const auto& [value, name] : code_names)
        if (value == code) return name;
    return "";
}

bool has_piece(ReshapeCode code) { return code <= ReshapeCode::size_not_met; }

WantedSize wanted_size(const PieceForm& form, const Target& target) {
    const auto bad = [](ReshapeCode code) { return WantedSize{code, {}, true}; };
    if (is_empty(target)) return bad(ReshapeCode::nothing_wanted);
    if (!is_sound(target)) return bad(ReshapeCode::unusable_target);
    if (conflicts(target)) return bad(ReshapeCode::conflicting_target);
    const Size own = own_size(form, target);
    WantedSize wanted{ReshapeCode::met, own, true};
    std::optional<double> width = target.width_mm;
    if (target.circumference_mm) width = *target.circumference_mm / std::numbers::pi;
    if (width && target.height_mm) {
        wanted.size = {*width, *target.height_mm};
        wanted.in_proportion = is_same({own.width_mm, own.width_mm * *target.height_mm / *width}, own);
        return wanted;
    }
    double scale = target.scale.value_or(1);
    if (width) scale = *width / own.width_mm;
    if (target.height_mm) scale = *target.height_mm / own.height_mm;
    if (!is_positive(scale)) return bad(ReshapeCode::unusable_target);
    wanted.size = {own.width_mm * scale, own.height_mm * scale};
    return wanted;
}

std::optional<double> scale_wanted(const PieceForm& form, const Target& target) {
    if (!form.usable() || target.silhouette || target.gauge) return std::nullopt;
    const WantedSize wanted = wanted_size(form, target);
    if (wanted.code != ReshapeCode::met || !wanted.in_proportion) return std::nullopt;
    return wanted.size.width_mm / form.size().width_mm;
}

ReshapeCode verdict(const Size& reached, const Size& wanted, const Gauge& gauge) {
    const auto met = [&](double r, double t) {
        return std::abs(r - t) <= size_tolerance_mm(t, gauge) * (1 + 1e-12);
    };
    const bool width = met(reached.width_mm, wanted.width_mm);
    const bool height = met(reached.height_mm, wanted.height_mm);
    if (width && height) return ReshapeCode::met;
    if (!width && !height) return ReshapeCode::size_not_met;
    return width ? ReshapeCode::height_not_met : ReshapeCode::width_not_met;
}

ReshapeTask reshape_task(const PieceForm& form, const Target& target, const ReshapeOptions& options) {
    ReshapeTask task;
    if (!form.usable()) return task;
    const WantedSize wanted = wanted_size(form, target);
    task.code = wanted.code;
    task.wanted = wanted.size;
    if (wanted.code != ReshapeCode::met) return task;
    const Gauge gauge = target.gauge.value_or(form.gauge);
    if (!target.silhouette && gauge == form.gauge && is_same(form.size(), wanted.size)) {
        task.code = ReshapeCode::unchanged;
        return task;
    }
    StitchProfile profile = profile_of(form, target, gauge);
    task.base = target.silhouette ? with_ends(form, profile) : form;
    task.problem = fit_problem(task.base, std::move(profile), gauge);
    if (target.silhouette) task.problem.fan_rounds = fan_of_an_outline;
    task.problem.scale = first_scale(form, target, gauge, wanted.size);
    task.problem.in_proportion = wanted.in_proportion && !target.silhouette && gauge == form.gauge;
    task.problem.wanted = wanted.size;
    task.problem.near_enough = near_enough(form.size(), wanted.size, target, options.tidiness);
    task.problem.tidiness = is_as_drawn(target, options) ? 0 : options.tidiness;
    task.problem.stop = options.stop;
    if (is_too_small(task.problem)) task.code = ReshapeCode::too_small;
    if (is_too_large(task.problem)) task.code = ReshapeCode::too_large;
    return task;
}

Reshaped resize(const PieceForm& form, const Target& target, const ReshapeOptions& options) {
    const ReshapeTask task = reshape_task(form, target, options);
    Reshaped result;
    result.code = task.code;
    result.before = form.size();
    result.wanted = task.wanted;
    if (task.code == ReshapeCode::unchanged) return unchanged(form, std::move(result));
    if (task.code != ReshapeCode::met) return result;
    Reshaped made = fitted(task, is_as_drawn(target, options), std::move(result));
    const bool can_be_brought_back = !target.silhouette && !target.gauge && has_piece(made.code);
    if (can_be_brought_back) made.returns_within_a_round = returns_within_a_round(made, options);
    return made;
}

Reshaped resize(const Toy& toy, std::size_t piece, const Target& target, const ReshapeOptions& options) {
    if (piece >= toy.pieces.size()) return {};
    return resize(piece_form(toy.pieces[piece], gauge_of(toy), nullptr, options.stop), target, options);
}

}  // namespace roundwright
