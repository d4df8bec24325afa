#include "core/reshape/rounds_for_meridian.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright {
namespace {

using std::numbers::pi;

constexpr double most_left_over = 0.1;
constexpr double drawn_in = 1.5;  // flat rounds of stitches that the thread of a last round draws in

bool on_axis(const Vec2& p, double width) { return p.x() < 1e-6 * width; }

// Stitches more a round that a stretch of the profile, so many of its rounds long, may grow or close by:
// `change` is what it does unscaled, and a round of the cut is longer than one of the profile by what a whole
// number of rounds leaves over.
double most_growth(double change, double along, const ProfileScale& scale, double flat_growth) {
    if (!(along > 0)) return flat_growth;
    const double left_over = std::clamp(along * scale.along, 1.0, 1 + most_left_over);
    return std::max(flat_growth, change / along * left_over);
}

void hold_back(const StitchProfile& profile, const ProfileScale& scale, const std::vector<double>& places,
               double flat_growth, std::vector<double>& wanted) {
    const auto most = [&](std::size_t i) {  // from place i - 1 to place i
        const double own = profile.stitches_at(places[i]) - profile.stitches_at(places[i - 1]);
        return most_growth(std::abs(own), places[i] - places[i - 1], scale, flat_growth);
    };
    if (profile.ring_start && places.front() > 0)
        wanted.front() = std::min(wanted.front(), most_growth(profile.stitches_at(places.front()),
                                                              places.front(), scale, flat_growth));
    const double left = profile.rounds() - places.back();
    if (profile.drawn_closed && left > 0)
        wanted.back() = std::min(wanted.back(),
                                 std::max(drawn_in * flat_growth, profile.stitches_at(places.back()) / left));
    for (std::size_t i = 1; i < wanted.size(); ++i) wanted[i] = std::min(wanted[i], wanted[i - 1] + most(i));
    for (std::size_t i = wanted.size(); i-- > 1;)
        wanted[i - 1] = std::min(wanted[i - 1], wanted[i] + most(i));
}

}  // namespace

double StitchProfile::stitches_at(double round) const {
    const auto above = std::upper_bound(at_round.begin(), at_round.end(), round);
    if (above == at_round.begin()) return stitches.front();
    if (above == at_round.end()) return stitches.back();
    const auto i = static_cast<std::size_t>(above - at_round.begin());
    const double t = (round - at_round[i - 1]) / (at_round[i] - at_round[i - 1]);
    return stitches[i - 1] + t * (stitches[i] - stitches[i - 1]);
}

StitchProfile stitch_profile(const ShapeProblem& problem, double stitch_width_mm) {
    StitchProfile profile;
    for (std::size_t i = 0; i < problem.rest_loop_mm.size(); ++i) {
        profile.at_round.push_back(double(i));
        profile.stitches.push_back(problem.rest_loop_mm[i] / stitch_width_mm);
    }
    profile.ring_start = problem.first == MeridianEnd::pole;
    profile.drawn_closed = problem.last == MeridianEnd::drawn_closed;
    if (profile.drawn_closed) {
        profile.at_round.push_back(profile.rounds() + problem.fan_height_mm / problem.rest_height_mm.back());
        profile.stitches.push_back(0);
    }
    return profile;
}

FabricAlong evenly_stretched(const Silhouette& silhouette, double area_stretch, const Gauge& gauge) {
    const ShapeOptions material;
    const double course = area_stretch / (1 + material.course_stiffness / material.wale_stiffness);
    const std::size_t points = silhouette.points.size();
    return {std::vector<double>(points, course),
            std::vector<double>(points - 1, gauge.round_height_mm * (1 + area_stretch - course))};
}

namespace {

/// The stretch from the last loop of a drawn end to its pole.
void add_fan(const ShapeProblem& problem, const Shape& shape, FabricAlong& fabric) {
    const auto& points = silhouette_of(shape, problem.last).points;
    const double fan = (points.back() - points[points.size() - 2]).norm();
    fabric.course_stretch.push_back(fabric.course_stretch.back());
    fabric.round_mm.push_back(fan * problem.rest_height_mm.back() / problem.fan_height_mm);
}

/// Along the fold: how the fabric would have to stretch to make a round piece of this outline.
FabricAlong as_folded(const ShapeProblem& problem, const Shape& shape) {
    const Silhouette outline = silhouette_of(shape, problem.last);
    FabricAlong fabric{shape.course_stretch, {}};
    for (std::size_t i = 0; i < shape.radius_mm.size(); ++i)
        if (problem.rest_loop_mm[i] > 0)
            fabric.course_stretch[i] = 2 * pi * outline.points[i].x() / problem.rest_loop_mm[i] - 1;
    for (std::size_t i = 1; i < shape.radius_mm.size(); ++i)
        fabric.round_mm.push_back((outline.points[i] - outline.points[i - 1]).norm());
    return fabric;
}

}  // namespace

FabricAlong as_solved(const ShapeProblem& problem, const Shape& shape) {
    if (shape.flattened()) {
        FabricAlong folded = as_folded(problem, shape);
        if (problem.last == MeridianEnd::drawn_closed) add_fan(problem, shape, folded);
        return folded;
    }
    FabricAlong fabric{shape.course_stretch, {}};
    for (std::size_t i = 0; i < shape.wale_stretch.size(); ++i)
        fabric.round_mm.push_back(problem.rest_height_mm[i] * (1 + shape.wale_stretch[i]));
    if (problem.last == MeridianEnd::drawn_closed) add_fan(problem, shape, fabric);
    return fabric;
}

StitchProfile stitch_profile(const Silhouette& silhouette, const FabricAlong& fabric,
                             double stitch_width_mm) {
    StitchProfile profile;
    const auto& points = silhouette.points;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const double climbed = i > 0 ? (points[i] - points[i - 1]).norm() / fabric.round_mm[i - 1] : 0;
        if (i > 0 && !(climbed > 0)) continue;
        profile.at_round.push_back(i > 0 ? profile.rounds() + climbed : 0);
        profile.stitches.push_back(2 * pi * points[i].x() /
                                   (stitch_width_mm * (1 + fabric.course_stretch[i])));
    }
    const double width = width_mm(silhouette);
    profile.ring_start = on_axis(points.front(), width);
    profile.drawn_closed = on_axis(points.back(), width);
    return profile;
}

double rounds_wanted(const StitchProfile& profile, const ProfileScale& scale, double fan_rounds) {
    return profile.rounds() * scale.along - (profile.drawn_closed ? fan_rounds : 0);
}

std::vector<double> places_of_rounds(const StitchProfile& profile, const ProfileScale& scale,
                                     double fan_rounds, int rounds, int kept) {
    const double fan = profile.drawn_closed ? fan_rounds : 0;
    const double step = kept > 0 ? 1 / scale.along : profile.rounds() / (rounds + fan);
    std::vector<double> places;
    for (int i = 1; i <= rounds; ++i)
        places.push_back(std::max(0.0, profile.rounds() - (rounds + fan - i) * step));
    return places;
}

std::vector<double> wanted_stitches(const StitchProfile& profile, const ProfileScale& scale,
                                    const std::vector<double>& places, double flat_growth) {
    std::vector<double> wanted;
    for (double place : places) wanted.push_back(scale.around * profile.stitches_at(place));
    if (!wanted.empty()) hold_back(profile, scale, places, flat_growth, wanted);
    return wanted;
}

}  // namespace roundwright
