#include "core/reshape/sculpt.h"

#include <algorithm>
#include <cmath>

#include "core/reshape/rounds_for_meridian.h"

namespace roundwright {
namespace {

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

FitProblem sculpting_problem(const SculptStart& start, const Silhouette& outline) {
    const PieceForm& form = start.form;
    const StitchProfile profile = stitch_profile(outline, start.fabric, form.gauge.stitch_width_mm);
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

}  // namespace

SculptStart sculpt_start(const PieceForm& form) {
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
    FitProblem problem = sculpting_problem(start, outline);
    problem.tidiness = tidiness;
    const Fit fit = cut_rounds(problem, warm != nullptr ? warm : &start.form.shape);
    if (!fit.found) return result;
    result.usable = true;
    result.piece = carried_over(start.form, fit).piece;
    result.shape = fit.shape;
    result.apart_mm = distance_mm(silhouette_of(fit.shape, start.form.problem.last), outline);
    return result;
}

}  // namespace roundwright
