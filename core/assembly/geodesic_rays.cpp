#include "core/assembly/geodesic_rays.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright {
namespace {

using std::numbers::pi;

constexpr int steps_of_a_ray = 32;
constexpr int halvings = 30;
constexpr int closer_steps = 6;
constexpr double near_enough_mm = 1e-7;
/// Nearer to the axis than this the angle says nothing.
constexpr double least_radius_mm = 1e-4;

double angle_about_axis(const Vec3& point) { return std::atan2(point.x(), point.z()); }

/// Towards growing `along`, at the surface.
Vec3 along_fabric(const SolvedPiece& piece, const SurfacePoint& at) {
    return piece.piece->starts_at_top ? Vec3(-at.up) : at.up;
}

Vec3 in_plane(const Vec3& way, const Vec3& normal) {
    const Vec3 flat = way - way.dot(normal) * normal;
    const double length = flat.norm();
    return length > 1e-12 ? Vec3(flat / length) : way;
}

}  // namespace

SurfaceSpot nearby_spot(const SolvedPiece& piece, const Vec3& point, SurfacePlace& hint) {
    SurfacePoint at = piece.surface.at(hint);
    const bool on_axis = std::hypot(at.point.x(), at.point.z()) < least_radius_mm;
    if (on_axis)
        hint.angle = angle_about_axis(point) - piece.piece->face_degrees * pi / 180;
    else if (!piece.measures.flattened)
        hint.angle += std::remainder(angle_about_axis(point) - angle_about_axis(at.point), 2 * pi);
    for (int step = 0; step < closer_steps; ++step) {
        at = piece.surface.at(hint);
        const Vec3 off = point - at.point;
        const double along = off.dot(along_fabric(piece, at));
        const double right = off.dot(at.right);
        if (std::abs(along) + std::abs(right) < near_enough_mm) return {at.point, at.normal};
        hint.along_mm = std::clamp(hint.along_mm + along, 0.0, piece.surface.end_mm());
        if (at.radius_mm > least_radius_mm) hint.angle += std::clamp(right / at.radius_mm, -0.5, 0.5);
    }
    at = piece.surface.at(hint);
    return {at.point, at.normal};
}

GeodesicRays::GeodesicRays(const SolvedPiece& onto, const SurfacePlace& from,
                           std::span<const Vec3> directions, double reach_mm)
    : onto_(onto), reach_mm_(reach_mm), step_mm_(reach_mm / steps_of_a_ray) {
    const SurfacePoint start = onto.surface.at(from);
    for (const Vec3& direction : directions) {
        ways_.push_back({{{start.point, start.normal}, in_plane(direction, start.normal), 0, from}});
        walk_on(ways_.back());
    }
}

GeodesicRays::GeodesicRays(const SolvedPiece& onto, const SurfaceSpot& pole, double end_mm,
                           std::span<const Vec3> directions, double reach_mm)
    : onto_(onto), reach_mm_(reach_mm), step_mm_(reach_mm / steps_of_a_ray) {
    const double face = onto.piece->face_degrees * pi / 180;
    for (const Vec3& direction : directions) {
        const Vec3 flat = in_plane(direction, pole.normal);
        const SurfacePlace place{end_mm, std::remainder(angle_about_axis(flat) - face, 2 * pi)};
        ways_.push_back({{pole, flat, 0, place}});
        const SurfacePoint loop = onto.surface.at(place);
        const double over = (loop.point - pole.place).norm();
        if (over > step_mm_ / 100)
            ways_.back().push_back({{loop.point, loop.normal}, in_plane(flat, loop.normal), over, place});
        walk_on(ways_.back());
    }
}

void GeodesicRays::walk_on(Way& way) const {
    while (way.back().travelled < reach_mm_ && way.size() < 2 * steps_of_a_ray) {
        const Step before = way.back();
        Step next = before;
        next.spot = nearby_spot(onto_, before.spot.place + step_mm_ * before.direction, next.place);
        const Vec3 chord = next.spot.place - before.spot.place;
        const double length = chord.norm();
        if (!(length > step_mm_ / 100)) break;  // an edge of the fabric
        next.direction = in_plane(before.direction, next.spot.normal);
        // The arc over a chord that turns by an angle b is b / 2 over sin(b / 2) times as long.
        const double half = std::acos(std::clamp(next.direction.dot(before.direction), -1.0, 1.0)) / 2;
        next.travelled = before.travelled + length * (half > 1e-6 ? half / std::sin(half) : 1);
        way.push_back(next);
    }
}

std::size_t GeodesicRays::step_beyond(const Way& way, double distance_mm) const {
    const auto above = std::ranges::lower_bound(way, distance_mm, {}, &Step::travelled);
    return std::min(static_cast<std::size_t>(above - way.begin()), way.size() - 1);
}

SurfaceSpot GeodesicRays::at(std::size_t ray, double distance_mm) const {
    const Way& way = ways_[ray];
    const std::size_t beyond = step_beyond(way, distance_mm);
    const Step& b = way[beyond];
    if (beyond == 0 || distance_mm >= b.travelled) return b.spot;
    const Step& a = way[beyond - 1];
    const double h = b.travelled - a.travelled;
    const double v = (distance_mm - a.travelled) / h, rest = 1 - v;
    const Vec3 place = rest * rest * (1 + 2 * v) * a.spot.place + v * v * (3 - 2 * v) * b.spot.place +
                       v * rest * h * (rest * a.direction - v * b.direction);
    return {place, (rest * a.spot.normal + v * b.spot.normal).normalized()};
}

FabricSpot GeodesicRays::on_surface(std::size_t ray, double distance_mm) const {
    SurfacePlace hint = ways_[ray][step_beyond(ways_[ray], distance_mm)].place;
    const SurfaceSpot near = at(ray, distance_mm);
    const SurfaceSpot spot = nearby_spot(onto_, near.place, hint);
    // Over what closes a pole there is no fabric to fall onto.
    return {(spot.place - near.place).norm() < step_mm_ ? spot : near, hint};
}

double GeodesicRays::circle_length_mm(double distance_mm) const {
    double length = 0;
    Vec3 before = at(rays() - 1, distance_mm).place;
    for (std::size_t ray = 0; ray < rays(); ++ray) {
        const Vec3 here = at(ray, distance_mm).place;
        length += (here - before).norm();
        before = here;
    }
    const double half = pi / static_cast<double>(rays());
    return length * half / std::sin(half);
}

double GeodesicRays::distance_of_circle_mm(double length_mm) const {
    constexpr int samples = 2 * steps_of_a_ray;
    double longest = 0, at_longest = 0;
    for (int k = 1; k <= samples; ++k) {
        const double distance = reach_mm_ * k / samples;
        const double length = circle_length_mm(distance);
        if (length > longest) {
            longest = length;
            at_longest = distance;
        }
        if (length < length_mm) continue;
        double low = reach_mm_ * (k - 1) / samples, high = distance;
        for (int halving = 0; halving < halvings; ++halving) {
            const double middle = (low + high) / 2;
            (circle_length_mm(middle) < length_mm ? low : high) = middle;
        }
        return (low + high) / 2;
    }
    return at_longest;
}

}  // namespace roundwright
