#include "core/reshape/sculpt.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/reshape/rounds_for_meridian.h"

namespace roundwright {
namespace {

constexpr int passes = 4;

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

// How far each stretch between two points was moved, over the one moved furthest.
std::vector<double> share_moved(const Silhouette& before, const Silhouette& after) {
    std::vector<double> moved;
    for (std::size_t i = 0; i < before.points.size(); ++i)
        moved.push_back((after.points[i] - before.points[i]).norm());
    const double most = *std::max_element(moved.begin(), moved.end());
    std::vector<double> share;
    for (std::size_t i = 1; i < moved.size(); ++i)
        share.push_back(most > 0 ? std::max(moved[i - 1], moved[i]) / most : 0);
    return share;
}

// The drawn outline is longer or shorter along than the stuffed one that stands as high: as many rounds fewer
// (or more) as it stands too high, taken where it was moved, so that the rest stays as it is.
void mend_height(double too_high_mm, const Silhouette& outline, const std::vector<double>& share,
                 FabricAlong& fabric) {
    double moved_rounds = 0;
    double moved_height = 0;
    for (std::size_t i = 0; i < share.size(); ++i) {
        const double rounds = (outline.points[i + 1] - outline.points[i]).norm() / fabric.round_mm[i];
        moved_rounds += share[i] * rounds;
        moved_height += share[i] * rounds * fabric.round_mm[i];
    }
    if (moved_rounds <= 0) return;
    const double fewer = std::clamp(too_high_mm / moved_height, -0.4, 0.4);
    for (std::size_t i = 0; i < share.size(); ++i) fabric.round_mm[i] /= 1 - fewer * share[i];
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
    const auto share = share_moved(start.outline, outline);
    FabricAlong fabric = start.fabric;
    Fit best;
    double least_apart = std::numeric_limits<double>::infinity();
    for (int pass = 0; pass < passes; ++pass) {
        FitProblem problem = sculpting_problem(start, outline, fabric);
        problem.tidiness = tidiness;
        const Fit fit = cut_rounds(problem, warm != nullptr ? warm : &start.form.shape);
        if (!fit.found) break;
        const double apart = distance_mm(silhouette_of(fit.shape, start.form.problem.last), outline);
        if (apart < least_apart) best = fit;
        least_apart = std::min(least_apart, apart);
        const double too_high = fit.shape.height_mm - height_mm(outline);
        if (std::abs(too_high) < start.form.gauge.round_height_mm / 2) break;
        mend_height(too_high, outline, share, fabric);
    }
    if (!best.found) return result;
    result.usable = true;
    result.piece = carried_over(start.form, best).piece;
    result.shape = best.shape;
    result.apart_mm = least_apart;
    return result;
}

}  // namespace roundwright
