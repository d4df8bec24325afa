#include "core/mesh/meridian.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace roundwright {
namespace {

constexpr double two_pi = 2 * std::numbers::pi;
constexpr double lean_in_stitches = 0.12;
constexpr double fewest_stitches_a_wave = 2;

Vec2 outward(const MeridianLoop& from, const MeridianLoop& to) {
    const Vec2 along(to.radius_mm - from.radius_mm, to.z_mm - from.z_mm);
    const double length = along.norm();
    return length > 0 ? Vec2(along.y() / length, -along.x() / length) : Vec2(0, 0);
}

void set_normals(std::vector<MeridianLoop>& loops) {
    for (std::size_t i = 0; i < loops.size(); ++i) {
        Vec2 sum(0, 0);
        if (i > 0) sum += outward(loops[i - 1], loops[i]);
        if (i + 1 < loops.size()) sum += outward(loops[i], loops[i + 1]);
        loops[i].normal = sum.norm() > 1e-6 ? Vec2(sum.normalized()) : Vec2(1, 0);
    }
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

void set_angles(std::vector<MeridianLoop>& loops, const std::vector<LaidRound>& rounds) {
    loops[0].start_angle = std::numbers::pi;
    loops[0].loops = std::max(1, rounds[0].loops_below);
    for (std::size_t i = 0; i < rounds.size(); ++i) {
        loops[i + 1].loops = static_cast<double>(rounds[i].cells.size());
        const double lean = lean_in_stitches * two_pi / loops[i + 1].loops;
        loops[i + 1].start_angle = loops[i].start_angle - mean_lag(rounds[i]) + lean;
    }
    for (std::size_t i = rounds.size() + 1; i < loops.size(); ++i) {
        loops[i].start_angle = loops[i - 1].start_angle;
        loops[i].loops = loops[i - 1].loops;
    }
}

/// Length that waves add to a loop, to lowest order: r pi (A n / r)^2 / 2.
double spare(const LoopWaves& waves, double radius) {
    const double slope_length = waves.amplitude_mm * waves.waves;
    return radius > 0 ? slope_length * slope_length / radius : 0;
}

bool has_waves(const LoopWaves& loop) { return loop.waves > 0 && loop.amplitude_mm > 0; }

}  // namespace

double MeridianLoop::angle(double loops_along) const { return start_angle - two_pi * loops_along / loops; }

Vec3 revolved(double angle, double radius_mm, double z_mm) {
    return {radius_mm * std::sin(angle), z_mm, radius_mm * std::cos(angle)};
}

Meridian lay_meridian(const std::vector<LaidRound>& rounds, const Piece& piece, const Shape& shape,
                      const std::vector<LoopWaves>& waves) {
    Meridian meridian;
    const double tiny = 1e-9 * std::max(1.0, shape.width_mm);
    for (std::size_t i = 0; i <= rounds.size(); ++i) {
        MeridianLoop loop;
        loop.radius_mm = std::max(0.0, shape.radius_mm[i]);
        loop.z_mm = shape.z_mm[i];
        if (i < waves.size()) loop.waves = waves[i];
        meridian.loops.push_back(loop);
    }
    meridian.closed_below = meridian.loops.front().radius_mm <= tiny;
    meridian.closed_above = piece.end == End::drawn_closed;
    if (meridian.closed_above) {
        MeridianLoop apex;
        const bool solved = shape.z_mm.size() > rounds.size() + 1;
        apex.z_mm = solved ? shape.z_mm[rounds.size() + 1] : meridian.loops.back().z_mm;
        meridian.loops.push_back(apex);
    }
    set_normals(meridian.loops);
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
            if (stitches[k] < fewest_stitches_a_wave * common) waves[k] = {};
        }
        i = std::max(last, i + 1);
    }
    return waves;
}

}  // namespace roundwright
