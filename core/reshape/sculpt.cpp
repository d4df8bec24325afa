#include "core/reshape/sculpt.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/reshape/match_fabric.h"
#include "core/reshape/rounds_for_meridian.h"

namespace roundwright {
namespace {

constexpr double flaw_mm = 1e3;  // rather any distance than fabric that ruffles or gathers

// Loop of the old piece that each place of the changed profile has come from, whole or not.
double old_loop_at(const StitchProfile& profile, const std::vector<std::size_t>& loops, double place) {
    const auto above = std::upper_bound(profile.at_round.begin(), profile.at_round.end(), place);
    if (above == profile.at_round.begin()) return double(loops.front());
    if (above == profile.at_round.end()) return double(loops.back());
    const auto i = static_cast<std::size_t>(above - profile.at_round.begin());
    const double t = (place - profile.at_round[i - 1]) / (profile.at_round[i] - profile.at_round[i - 1]);
    return double(loops[i - 1]) + t * double(loops[i] - loops[i - 1]);
}

// Points that moved onto their neighbour carry no part of the profile.
std::vector<std::size_t> loops_of(const Silhouette& outline) {
    std::vector<std::size_t> loops{0};
    for (std::size_t i = 1; i < outline.points.size(); ++i)
        if ((outline.points[i] - outline.points[i - 1]).norm() > 0) loops.push_back(i);
    return loops;
}

std::vector<int> old_counts(const PieceForm& form) { return stitch_counts(form.graph.graph); }

FitProblem sculpting_problem(const SculptStart& start, const Silhouette& outline, const FabricAlong& fabric) {
    const PieceForm& form = start.form;
    const StitchProfile profile = stitch_profile(outline, fabric, form.gauge.stitch_width_mm);
    FitProblem problem = fit_problem(form, profile, form.gauge);
    problem.wanted = {width_mm(outline), height_mm(outline)};
    problem.accepted_at = [profile, loops = loops_of(outline),
                           counts = old_counts(form)](const std::vector<double>& places) {
        std::vector<int> accepted;
        for (double place : places) {
            const double loop = old_loop_at(profile, loops, place);
            const auto whole = static_cast<std::size_t>(std::lround(loop));
            const bool near = whole >= 1 && whole <= counts.size() && std::abs(loop - double(whole)) < 0.25;
            accepted.push_back(near ? counts[whole - 1] : 0);
        }
        return accepted;
    };
    return problem;
}

// Of each stretch between two points, whether one of them was moved.
std::vector<bool> stretches_moved(const Silhouette& before, const Silhouette& after) {
    std::vector<bool> moved;
    for (std::size_t i = 1; i < before.points.size(); ++i)
        moved.push_back(after.points[i - 1] != before.points[i - 1] || after.points[i] != before.points[i]);
    return moved;
}

// The fabric of the start, matched to the outline over what was moved of it.
FabricAlong fabric_for(const SculptStart& start, const Silhouette& outline, const Shape& warm) {
    const MeridianEnd last = start.form.problem.last;
    Shape shape = warm;
    int rounds = 0;  // as many in every trial, of one height or another
    const auto attempt = [&](const FabricAlong& fabric) -> std::optional<TriedFabric> {
        const FitProblem problem = sculpting_problem(start, outline, fabric);
        if (rounds == 0) rounds = nearest_numbers_of_rounds(problem, problem.scale).front();
        const RoundsDraft draft = draft_in_parts(problem, problem.scale, rounds);
        const Shape made = solve_shape(problem.problem_of(draft), {}, &shape);
        if (!made.usable()) return std::nullopt;
        if (made.termination == Termination::converged) shape = made;
        TriedFabric tried{silhouette_of(made, last), {0}};
        tried.part.insert(tried.part.end(), draft.ends_at.begin(), draft.ends_at.end());
        tried.part.resize(tried.made.points.size(), 1);
        return tried;
    };
    return matched_fabric(outline, start.fabric, stretches_moved(start.outline, outline),
                          start.form.gauge.round_height_mm, attempt);
}

}  // namespace

SculptStart sculpt_start(const PieceForm& form) {
    if (!is_of_revolution(form.fidelity)) return {form, {}, {}};
    return {form, form.outline(), as_solved(form.problem, form.shape)};
}

Silhouette dragged(const Silhouette& outline, std::size_t point, const Vec2& by_mm, double reach_mm) {
    Silhouette changed = outline;
    const auto along = arc_lengths(outline);
    for (std::size_t i = 0; i < along.size(); ++i) {
        const double t = i == point ? 0 : (along[i] - along[point]) / reach_mm;
        if (!(std::abs(t) < 1)) continue;
        const double share = (1 - t * t) * (1 - t * t);
        const bool on_axis = outline.points[i].x() <= 0;
        changed.points[i].x() = on_axis ? 0 : std::max(0.0, outline.points[i].x() + share * by_mm.x());
        changed.points[i].y() += share * by_mm.y();
    }
    return changed;
}

Sculpted sculpt(const SculptStart& start, const Silhouette& outline, double tidiness, const Shape* warm) {
    Sculpted result;
    result.outline = outline;
    if (!is_usable(outline) || outline.points.size() != start.outline.points.size()) return result;
    const Shape& from = warm != nullptr && warm->usable() ? *warm : start.form.shape;
    FitProblem problem = sculpting_problem(start, outline, fabric_for(start, outline, from));
    problem.tidiness = tidiness;
    set_own_fabric(start.form, problem);
    const double half_round = start.form.gauge.round_height_mm / 2;
    double least = std::numeric_limits<double>::infinity();
    Fit best;
    for (const int rounds : nearest_numbers_of_rounds(problem, problem.scale)) {
        const Fit fit = cut_rounds(problem, rounds, &from);
        if (!fit.found) continue;
        const double apart = distance_mm(silhouette_of(fit.shape, start.form.problem.last), outline);
        const double height_off = std::abs(fit.shape.height_mm - height_mm(outline));
        const double merit = apart + std::max(0.0, height_off - half_round) + flaw_mm * double(fit.flaws);
        if (merit >= least) continue;
        least = merit;
        best = fit;
        result.apart_mm = apart;
    }
    if (!best.found) return result;
    result.usable = true;
    result.piece = carried_over(start.form, best).piece;
    result.shape = best.shape;
    return result;
}

}  // namespace roundwright
