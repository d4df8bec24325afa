#include "core/mesh/revolved_surface.h"

#include <algorithm>
#include <cmath>

namespace roundwright {
namespace {

/// Moves a point by the waves of the loops beside it, and tilts its normal by their slope along the loop and
/// along the meridian. A lift d of a surface of mean curvature H holds (d + H d^2) per area to second order,
/// so that the waves are sunk by H A^2 / 2, the mean of H d^2, and the piece keeps its volume.
void add_waves(RevolvedPoint& point, const LaidLoop& below, const LaidLoop& above, double v) {
    const int waves = std::max(below.waves.waves, above.waves.waves);
    const double amplitude = (1 - v) * below.waves.amplitude_mm + v * above.waves.amplitude_mm;
    const Vec2 along(above.radius_mm - below.radius_mm, above.z_mm - below.z_mm);
    const double length = std::max(along.norm(), 1e-9);
    const double radius = std::max(point.place.x(), 1e-9);
    const double crest = std::cos(waves * point.angle);
    const double curvature = (1 - v) * below.mean_curvature + v * above.mean_curvature;
    point.place += (amplitude * crest - curvature * amplitude * amplitude / 2) * point.normal;
    point.tilt = amplitude * waves * std::sin(waves * point.angle) / radius;
    point.normal -= (above.waves.amplitude_mm - below.waves.amplitude_mm) * crest / (length * length) * along;
    const double scale = std::sqrt(point.normal.squaredNorm() + point.tilt * point.tilt);
    point.normal /= scale;
    point.tilt /= scale;
}

double highest_mm(const LaidLoop& loop) {
    return loop.z_mm + (loop.section ? loop.section->highest_mm() : 0);
}

}  // namespace

RevolvedSurface::RevolvedSurface(LaidMeridian meridian, bool turned_over) : meridian_(std::move(meridian)) {
    if (!turned_over) return;
    side_ = -1;
    for (const auto& loop : meridian_.loops) lowest_mm_ = std::max(lowest_mm_, highest_mm(loop));
    if (meridian_.pole_below) lowest_mm_ = std::max(lowest_mm_, meridian_.pole_below->z_mm);
    if (meridian_.pole_above) lowest_mm_ = std::max(lowest_mm_, meridian_.pole_above->z_mm);
}

RevolvedPoint RevolvedSurface::between(const LaidLoop& below, double angle_below, const LaidLoop& above,
                                       double angle_above, double v) {
    RevolvedPoint point;
    point.angle = angle_below + v * (angle_above - angle_below);
    point.place = Vec2(below.radius_mm + v * (above.radius_mm - below.radius_mm),
                       below.z_mm + v * (above.z_mm - below.z_mm));
    point.normal = (1 - v) * below.normal + v * above.normal;
    const double length = point.normal.norm();
    point.normal = length > 1e-9 ? Vec2(point.normal / length) : above.normal;
    if (below.section && above.section)
        point.section = roundwright::between(*below.section, *above.section, v);
    if (waves_between(below, above)) add_waves(point, below, above, v);
    return point;
}

RevolvedPoint RevolvedSurface::on_loop(std::size_t edge, double loops_along) const {
    const auto& here = loop(edge);
    return between(here, here.angle(loops_along), here, here.angle(loops_along), 1);
}

Vec3 RevolvedSurface::place(const RevolvedPoint& point, double lift_mm, double factor) const {
    return place(point, lift_mm, factor, std::sin(point.angle), std::cos(point.angle));
}

Vec3 RevolvedSurface::place_on_section(const RevolvedPoint& point, double lift_mm, double factor) const {
    const SectionPoint at = point_on(*point.section, point.angle, lift_mm * point.normal.x(), factor);
    const double up = point.place.y() + at.place.y() + lift_mm * point.normal.y();
    return {side_ * at.place.x(), lowest_mm_ + side_ * up, at.place.z()};
}

Vec3 RevolvedSurface::normal_on_section(const RevolvedPoint& point) const {
    const Vec3 outward = point.normal.x() * point_on(*point.section, point.angle).normal;
    return {side_ * outward.x(), side_ * (outward.y() + point.normal.y()), outward.z()};
}

Vec3 RevolvedSurface::normal(const RevolvedPoint& point) const {
    return normal(point, std::sin(point.angle), std::cos(point.angle));
}

}  // namespace roundwright
