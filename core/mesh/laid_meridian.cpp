#include "core/mesh/laid_meridian.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "core/stitches/stitch_slant.h"

namespace roundwright {
namespace {

constexpr double two_pi = 2 * std::numbers::pi;
constexpr double fewest_stitches_a_wave = 2;
constexpr double most_of_radius = 0.5;

Vec2 outward(const LaidLoop& from, const LaidLoop& to) {
    const Vec2 along(to.radius_mm - from.radius_mm, to.z_mm - from.z_mm);
    const double length = along.norm();
    return length > 0 ? Vec2(along.y() / length, -along.x() / length) : Vec2(0, 0);
}

double length(const LaidLoop& from, const LaidLoop& to) {
    return std::hypot(to.radius_mm - from.radius_mm, to.z_mm - from.z_mm);
}

/// Sets a loop's normal, the mean of those beside it, and its curvature: n_r / r around the axis, and along
/// the meridian the turn of the normal over half the way to both neighbours.
void bend(LaidLoop& loop, const LaidLoop* before, const LaidLoop* after) {
    const Vec2 from = before ? outward(*before, loop) : outward(loop, *after);
    const Vec2 to = after ? outward(loop, *after) : from;
    const Vec2 sum = from + to;
    loop.normal = sum.norm() > 1e-6 ? Vec2(sum.normalized()) : Vec2(1, 0);
    const double way = ((before ? length(*before, loop) : 0) + (after ? length(loop, *after) : 0)) / 2;
    const double turn = std::atan2(from.x() * to.y() - from.y() * to.x(), from.dot(to));
    loop.mean_curvature = (way > 0 ? turn / way : 0) / 2;
    if (loop.radius_mm > 0) loop.mean_curvature += loop.normal.x() / loop.radius_mm / 2;
}

/// A fan counts as a round beside its loop.
void bend_all(LaidMeridian& meridian) {
    auto& loops = meridian.loops;
    for (std::size_t i = 0; i < loops.size(); ++i) {
        const LaidLoop* below = meridian.pole_below ? &*meridian.pole_below : nullptr;
        const LaidLoop* above = meridian.pole_above ? &*meridian.pole_above : nullptr;
        bend(loops[i], i > 0 ? &loops[i - 1] : below, i + 1 < loops.size() ? &loops[i + 1] : above);
    }
    if (meridian.starts_in_a_point()) loops.front().normal = Vec2(0, -1);
}

/// Mean angle by which the stitches' feet, from the start of the loop below, are ahead of their heads, from
/// the start of the loop above.
double mean_lag(const LaidRound& round) {
    const double below = two_pi / std::max(1, round.loops_below);
    const double above = two_pi / static_cast<double>(round.cells.size());
    double sum = 0;
    for (std::size_t c = 0; c < round.cells.size(); ++c)
        sum += below * (round.cells[c].below_first + round.cells[c].below_last) / 2 -
               above * (static_cast<double>(c) + 0.5);
    return sum / static_cast<double>(round.cells.size());
}

void set_angles(std::vector<LaidLoop>& loops, const std::vector<LaidRound>& rounds) {
    loops[0].start_angle = std::numbers::pi;
    loops[0].loops = std::max(1, rounds[0].loops_below);
    for (std::size_t i = 0; i < rounds.size(); ++i) {
        loops[i + 1].loops = static_cast<double>(rounds[i].cells.size());
        const double lean = usual_slant_stitches * two_pi / loops[i + 1].loops;
        loops[i + 1].start_angle = loops[i].start_angle - mean_lag(rounds[i]) + lean;
    }
}

/// Length that waves add to a loop, to lowest order: r pi (A n / r)^2 / 2.
double spare(const LoopWaves& waves, double radius) {
    const double slope_length = waves.amplitude_mm * waves.waves;
    return radius > 0 ? slope_length * slope_length / radius : 0;
}

LaidLoop pole(double z_mm, double outward_z) {
    LaidLoop found;
    found.z_mm = z_mm;
    found.normal = Vec2(0, outward_z);
    return found;
}

/// A layer is plane, and square on its own thickness.
void flatten(LaidLoop& loop) {
    loop.mean_curvature = 0;
    loop.normal = Vec2(1, 0);
}

/// Rows are not sewn together at their last edge.
bool closes_above(const Piece& piece, const Shape& shape) {
    return piece.end == End::drawn_closed || (piece.end == End::sewn_straight && shape.flattened());
}

bool has_waves(const LoopWaves& loop) { return loop.waves > 0 && loop.amplitude_mm > 0; }

}  // namespace

double LaidLoop::angle(double loops_along) const { return start_angle - two_pi * loops_along / loops; }

LaidMeridian lay_meridian(const std::vector<LaidRound>& rounds, const Piece& piece, const Shape& shape,
                          const std::vector<LoopWaves>& waves) {
    LaidMeridian meridian;
    const double tiny = 1e-9 * std::max(1.0, shape.width_mm);
    for (std::size_t i = 0; i <= rounds.size(); ++i) {
        LaidLoop loop;
        loop.radius_mm = std::max(0.0, shape.radius_mm[i]);
        loop.z_mm = shape.z_mm[i];
        if (shape.flattened())
            loop.section = shape.sections[i];
        else if (i < waves.size())
            loop.waves = waves[i];
        meridian.loops.push_back(loop);
    }
    if (meridian.loops.front().radius_mm <= tiny) meridian.loops.front().radius_mm = 0;
    if (std::holds_alternative<OvalChain>(piece.start)) meridian.pole_below = pole(shape.first_pole_z_mm, -1);
    if (closes_above(piece, shape)) meridian.pole_above = pole(shape.last_pole_z_mm, 1);
    bend_all(meridian);
    for (LaidLoop& loop : meridian.loops)
        if (loop.section && !(shape.pressure > 0)) flatten(loop);
    set_angles(meridian.loops, rounds);
    return meridian;
}

std::vector<LoopWaves> agreeing_waves(std::vector<LoopWaves> waves, const std::vector<double>& radius_mm,
                                      const std::vector<double>& stitches) {
    for (std::size_t i = 0; i < waves.size();) {
        std::size_t last = i, most = i;
        for (; last < waves.size() && has_waves(waves[last]); ++last)
            if (spare(waves[last], radius_mm[last]) > spare(waves[most], radius_mm[most])) most = last;
        const int common = waves[most].waves;
        for (std::size_t k = i; k < last; ++k) {
            waves[k].amplitude_mm *= static_cast<double>(waves[k].waves) / common;
            waves[k].waves = common;
            waves[k].amplitude_mm = std::min(waves[k].amplitude_mm, most_of_radius * radius_mm[k]);
            if (stitches[k] < fewest_stitches_a_wave * common) waves[k] = {};
        }
        i = std::max(last, i + 1);
    }
    return waves;
}

}  // namespace roundwright
