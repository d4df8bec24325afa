#include "core/reshape/reshape_task.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <utility>

#include "core/base/limits.h"
#include "core/reshape/wanted_size.h"
#include "core/shape/fabric_limits.h"

namespace roundwright {
namespace {

// Drawn closed as it was begun: the last round is as far from its pole as the first, and has as many
// stitches.
constexpr double fan_of_an_outline = 1;
constexpr double nearest_sought = 0.8;  // of half a round: what is worked larger again adds to the miss

StitchProfile profile_of(const PieceForm& form, const Target& target, const Gauge& gauge) {
    if (!target.silhouette) return stitch_profile(form.problem, form.gauge.stitch_width_mm);
    const Silhouette& outline = *target.silhouette;
    FabricAlong fabric = evenly_stretched(outline, form.piece.area_stretch, gauge);
    // Half a flattened loop spans what is pi / 2 times as wide as the loop laid round.
    if (form.problem.limp)
        for (double& stretch : fabric.course_stretch) stretch = std::numbers::pi / 2 - 1;
    return stitch_profile(outline, fabric, gauge.stitch_width_mm);
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
    if (profile.drawn_closed)
        piece.end = End::drawn_closed;
    else if (piece.end == End::drawn_closed)
        piece.end = End::left_open;
}

PieceForm with_ends(const PieceForm& form, const StitchProfile& profile) {
    PieceForm changed = form;
    set_ends(changed.piece, profile);
    changed.problem.first = profile.ring_start ? MeridianEnd::pole : MeridianEnd::open;
    changed.problem.first_fan_height_mm = 0;
    changed.problem.equivalent_round = changed.piece.joining == Joining::rows;
    return changed;
}

bool is_same_gauge(const Gauge& a, const Gauge& b) {
    return a.stitch_width_mm == b.stitch_width_mm && a.round_height_mm == b.round_height_mm;
}

// Six more a round may lie flat in one yarn and ruffle in another.
void start_as_lies_flat(const PieceForm& form, FitProblem& problem) {
    const double before = double(problem.start_count) / flat_growth(form.gauge);
    const double most = std::max(1 + ruffles_above_share, before) * flat_growth(problem.gauge);
    problem.start_count = std::max(1, std::min(problem.start_count, static_cast<int>(most)));
}

// What is drawn, or the piece's own outline made larger or smaller: a point a round, or about so.
Silhouette wanted_outline(const PieceForm& form, const Target& target, const Gauge& gauge,
                          const Size& wanted) {
    Silhouette outline = target.silhouette ? *target.silhouette : form.outline();
    const Size own = own_size(form, target);
    for (Vec2& p : outline.points) {
        p.x() *= wanted.width_mm / own.width_mm;
        p.y() *= height_ratio(wanted, own);
    }
    return thinned(outline, gauge.round_height_mm);
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

}  // namespace

bool is_as_drawn(const Target& target, const ReshapeOptions& options) {
    return options.as_drawn && target.silhouette;
}

ReshapeTask reshape_task(const PieceForm& form, const Target& target, const ReshapeOptions& options) {
    ReshapeTask task;
    if (!form.usable()) return task;
    if (!is_of_revolution(form.fidelity)) {
        task.code = ReshapeCode::not_of_revolution;
        return task;
    }
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
    set_own_fabric(form, task.problem);
    if (!is_same_gauge(gauge, form.gauge)) start_as_lies_flat(form, task.problem);
    task.problem.scale = first_scale(form, target, gauge, wanted.size);
    task.problem.in_proportion = wanted.in_proportion && !target.silhouette && gauge == form.gauge;
    task.problem.wanted = wanted.size;
    task.problem.outline = wanted_outline(form, target, gauge, wanted.size);
    task.problem.near_enough = near_enough(form.size(), wanted.size, target, options.tidiness);
    task.problem.tidiness = is_as_drawn(target, options) ? 0 : options.tidiness;
    task.problem.stop = options.stop;
    if (is_too_small(task.problem)) task.code = ReshapeCode::too_small;
    if (is_too_large(task.problem)) task.code = ReshapeCode::too_large;
    return task;
}

}  // namespace roundwright
