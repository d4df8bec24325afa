#include "core/face/revolved_face.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/face/geodesic.h"
#include "core/mesh/mean_surface.h"

namespace roundwright {

namespace {

using std::numbers::pi;

/// An angle brought into [-pi, pi].
double wrapped(double angle) { return std::remainder(angle, 2 * pi); }

}  // namespace

RevolvedFace::RevolvedFace(const Piece& piece, const Shape& shape)
    : face_radians_(piece.face_degrees * pi / 180),
      upside_down_(piece.starts_at_top),
      closed_start_(std::holds_alternative<MagicRing>(piece.start)),
      closed_end_(piece.end == End::drawn_closed),
      joined_start_(closed_start_ || std::holds_alternative<OvalChain>(piece.start)),
      joined_end_(piece.end != End::left_open) {
    height_mm_ = shape.height_mm;
    sections_ = shape.sections;
    std::vector<Vec2> loops;
    double travelled = 0;
    for (std::size_t k = 0; k < shape.radius_mm.size(); ++k) {
        const Vec2 loop(shape.radius_mm[k], upside_down_ ? height_mm_ - shape.z_mm[k] : shape.z_mm[k]);
        if (k > 0) travelled += (loop - loops.back()).norm();
        loops.push_back(loop);
        loop_of_.push_back(travelled);
        width_mm_ = std::max(width_mm_, 2 * shape.reach_mm(k));
    }
    profile_ = SmoothProfile(std::move(loops), closed_start_, false);
}

SurfacePoint RevolvedFace::at(const SurfacePlace& place) const {
    if (!sections_.empty()) return at_flattened(place);
    SurfacePoint result;
    const SmoothProfile::Sample here = profile_.at(place.along_mm);
    const double speed = std::max(here.tangent.norm(), std::numeric_limits<double>::min());
    const Vec2 tangent = here.tangent / speed;
    // Outwards is to the right of the way from the start, for a piece that starts at the bottom.
    const double turned = upside_down_ ? -1 : 1;
    const Vec2 outwards = turned * Vec2(tangent.y(), -tangent.x());
    const Vec2 upwards = turned * tangent;

    const double angle = place.angle + face_radians_;
    const Vec3 radial(std::sin(angle), 0, std::cos(angle));
    result.point = here.point.x() * radial + here.point.y() * Vec3::UnitY();
    result.normal = outwards.x() * radial + outwards.y() * Vec3::UnitY();
    result.up = upwards.x() * radial + upwards.y() * Vec3::UnitY();
    result.right = Vec3(std::cos(angle), 0, -std::sin(angle));
    result.height_mm = here.point.y();
    result.radius_mm = here.point.x();
    // Principal curvatures of a surface of revolution (do Carmo, 3-3): of the meridian, and, by Meusnier, of
    // the circle of latitude.
    result.meridian_curvature = -here.bend.dot(outwards) / (speed * speed);
    result.round_curvature = here.point.x() > 0 ? outwards.x() / here.point.x() : result.meridian_curvature;
    return result;
}

LoopSection RevolvedFace::section_at(double along_mm) const {
    const auto above = std::upper_bound(loop_of_.begin() + 1, loop_of_.end() - 1, along_mm);
    const auto i = static_cast<std::size_t>(above - loop_of_.begin());
    const double way = loop_of_[i] - loop_of_[i - 1];
    const double share = way > 0 ? std::clamp((along_mm - loop_of_[i - 1]) / way, 0.0, 1.0) : 0;
    return between(sections_[i - 1], sections_[i], share);
}

SurfacePoint RevolvedFace::at_flattened(const SurfacePlace& place) const {
    const double turned = upside_down_ ? -1 : 1;
    const double angle = place.angle + face_radians_;
    const auto point_at = [&](double along) {
        const SectionPoint on = point_on(section_at(along), turned * angle);
        return Vec3(turned * on.place.x(), profile_.at(along).point.y() + turned * on.place.y(),
                    on.place.z());
    };
    const LoopSection section = section_at(place.along_mm);
    const Vec3 outward = point_on(section, turned * angle).normal;
    SurfacePoint result;
    result.point = point_at(place.along_mm);
    result.normal = Vec3(turned * outward.x(), turned * outward.y(), outward.z());
    const double step = end_mm() / 1000;
    const Vec3 along = turned * (point_at(std::min(end_mm(), place.along_mm + step)) -
                                 point_at(std::max(0.0, place.along_mm - step)));
    const Vec3 up = along - along.dot(result.normal) * result.normal;
    result.up = up.norm() > 0 ? Vec3(up.normalized()) : Vec3::UnitY();
    result.right = result.up.cross(result.normal);
    result.height_mm = result.point.y();
    result.radius_mm = section.half_width_mm;
    return result;
}

double RevolvedFace::flattened_angle(double along_mm, const Vec3& point) const {
    const double turned = upside_down_ ? -1 : 1;
    const Vec3 seen(turned * point.x(), turned * (point.y() - profile_.at(along_mm).point.y()), point.z());
    return wrapped(turned * nearest_angle(section_at(along_mm), seen) - face_radians_);
}

template <class Distance>
double RevolvedFace::nearest_along(const Distance& distance) const {
    constexpr int per_loop = 4;
    const int samples = per_loop * static_cast<int>(loop_of_.size());
    const double step = end_mm() / samples;
    double best = 0;
    for (int k = 1; k <= samples; ++k) {
        if (distance(k * step) < distance(best)) best = k * step;
    }
    // Ternary search between the neighbours of the best sample.
    double low = std::max(0.0, best - step);
    double high = std::min(end_mm(), best + step);
    for (int i = 0; i < 40; ++i) {
        const double a = low + (high - low) / 3;
        const double b = high - (high - low) / 3;
        (distance(a) < distance(b) ? high : low) = distance(a) < distance(b) ? b : a;
    }
    return (low + high) / 2;
}

SurfacePlace RevolvedFace::nearest(const Vec3& point) const {
    if (!sections_.empty()) {
        const double along = nearest_along([&](double way) {
            return (at_flattened({way, flattened_angle(way, point)}).point - point).squaredNorm();
        });
        return {along, flattened_angle(along, point)};
    }
    const Vec2 wanted(std::hypot(point.x(), point.z()), point.y());
    const double along =
        nearest_along([&](double way) { return (profile_.at(way).point - wanted).squaredNorm(); });
    return {along, wrapped(std::atan2(point.x(), point.z()) - face_radians_)};
}

double RevolvedFace::distance_along_mm(const SurfacePlace& from, const SurfacePlace& to) const {
    if (!sections_.empty()) return flattened_distance_mm(from, to);
    double shortest =
        geodesic_length_mm(profile_, from.along_mm, to.along_mm, wrapped(to.angle - from.angle));
    const auto over_end = [&](double end) {
        return profile_.length_mm(from.along_mm, end) + profile_.length_mm(to.along_mm, end);
    };
    if (closed_start_) shortest = std::min(shortest, over_end(0));
    if (closed_end_) shortest = std::min(shortest, over_end(end_mm()) + 2 * profile_.at(end_mm()).point.x());
    return shortest;
}

/// Its loops' sections, and the seam or pole where its ends are closed.
Mesh RevolvedFace::flattened_mesh() const {
    constexpr std::size_t points_around = 96, steps = 2;
    const double turned = upside_down_ ? -1 : 1;
    MeanSurface surface;
    surface.in_layers = true;
    for (std::size_t loop = 0; loop < sections_.size(); ++loop) {
        auto& points = surface.loops.emplace_back();
        const double height = profile_.at(loop_of_[loop]).point.y();
        for (std::size_t k = 0; k < points_around; ++k) {
            const double angle = -2 * pi * static_cast<double>(k) / points_around;
            const SectionPoint on = point_on(sections_[loop], angle);
            points.push_back({{turned * on.place.x(), height + turned * on.place.y(), on.place.z()},
                              {turned * on.normal.x(), turned * on.normal.y(), on.normal.z()}});
        }
    }
    const auto middle_of = [](const std::vector<FabricPoint>& loop) {
        FabricPoint middle;
        for (const FabricPoint& point : loop) middle.place += point.place / static_cast<double>(loop.size());
        return middle;
    };
    if (joined_start_) surface.pole_below = middle_of(surface.loops.front());
    if (joined_end_) surface.pole_above = middle_of(surface.loops.back());
    return smooth_mesh(surface, steps);
}

/// Within a layer the way is straight; from one to the other it goes over whatever joins them.
double RevolvedFace::flattened_distance_mm(const SurfacePlace& from, const SurfacePlace& to) const {
    const SurfacePoint a = at_flattened(from);
    const SurfacePoint b = at_flattened(to);
    if (a.normal.dot(b.normal) > 0) return (a.point - b.point).norm();
    std::call_once(measured_, [this] { geodesics_ = std::make_unique<MeshGeodesics>(flattened_mesh()); });
    return geodesics_->distance_mm(a.point, b.point);
}

}  // namespace roundwright
