#include "core/face/fabric_face.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace roundwright {
namespace {

using std::numbers::pi;

constexpr std::size_t points_around = 96, steps_a_round = 3;

Vec3 unit(const Vec3& way, const Vec3& otherwise) {
    const double length = way.norm();
    return length > 1e-12 ? Vec3(way / length) : otherwise;
}

Vec3 centre_of(const std::vector<FabricPoint>& loop) {
    Vec3 sum = Vec3::Zero();
    for (const FabricPoint& point : loop) sum += point.place;
    return sum / static_cast<double>(loop.size());
}

}  // namespace

FabricFace::FabricFace(const Piece& piece, std::shared_ptr<const FabricGeometry> fabric)
    : fabric_(std::move(fabric)),
      surface_(mean_surface(*fabric_, points_around)),
      face_radians_(piece.face_degrees * pi / 180),
      turned_(piece.starts_at_top ? -1 : 1) {
    measure();
    for (std::size_t edge = 0; edge < surface_.loops.size(); ++edge) middle_.push_back(middle_of_face(edge));
}

void FabricFace::measure() {
    const Vec3 right(std::cos(face_radians_), 0, -std::sin(face_radians_));
    Vec2 most = Vec2::Constant(-std::numeric_limits<double>::infinity()), least = -most;
    const auto reach = [&](const Vec3& place) {
        const Vec2 seen(place.dot(right), place.y());
        most = most.cwiseMax(seen);
        least = least.cwiseMin(seen);
    };
    for (const auto& loop : surface_.loops)
        for (const FabricPoint& point : loop) reach(point.place);
    for (const auto& pole : {surface_.pole_below, surface_.pole_above})
        if (pole) reach(pole->place);
    width_mm_ = most.x() - least.x();
    height_mm_ = most.y() - least.y();
    lowest_mm_ = least.y();
    along_ = {0};
    for (std::size_t edge = 1; edge < surface_.loops.size(); ++edge) {
        double way = 0;
        for (std::size_t k = 0; k < points_around; ++k)
            way += (surface_.loops[edge][k].place - surface_.loops[edge - 1][k].place).norm();
        along_.push_back(along_.back() + way / points_around);
    }
}

/// Where the loop crosses the plane that the face looks in, before its own centre: found between its points
/// by bisection.
double FabricFace::middle_of_face(std::size_t edge) const {
    const Vec3 forward(std::sin(face_radians_), 0, std::cos(face_radians_));
    const Vec3 right(std::cos(face_radians_), 0, -std::sin(face_radians_));
    const Vec3 centre = centre_of(surface_.loops[edge]);
    const double loops = fabric_->loops(edge);
    const auto aside = [&](double along) {
        return (fabric_->on_edge(edge, along - std::floor(along / loops) * loops).place - centre).dot(right);
    };
    const auto share = [&](std::size_t k) { return static_cast<double>(k) / points_around * loops; };
    double found = 0, furthest = -std::numeric_limits<double>::infinity();
    for (std::size_t k = 0; k < points_around; ++k) {
        double low = share(k), high = share(k + 1);
        const double before = aside(low);
        if (before == 0 || (before > 0) == (aside(high) > 0)) {
            if (before != 0) continue;
            high = low;
        }
        for (int halving = 0; halving < 40 && low < high; ++halving) {
            const double middle = (low + high) / 2;
            ((aside(middle) > 0) == (before > 0) ? low : high) = middle;
        }
        const double ahead =
            (fabric_->on_edge(edge, std::min(low, loops * (1 - 1e-12))).place - centre).dot(forward);
        if (ahead > furthest) {
            furthest = ahead;
            found = low;
        }
    }
    return found;
}

FabricFace::Level FabricFace::level(double along_mm) const {
    const auto above = std::upper_bound(along_.begin() + 1, along_.end() - 1, along_mm);
    const auto edge = static_cast<std::size_t>(above - along_.begin()) - 1;
    const double way = along_[edge + 1] - along_[edge];
    return {edge, way > 0 ? std::clamp((along_mm - along_[edge]) / way, 0.0, 1.0) : 0};
}

double FabricFace::stitches_along(std::size_t edge, double angle) const {
    const double loops = fabric_->loops(edge);
    const double along = middle_[edge] - turned_ * angle / (2 * pi) * loops;
    return along - std::floor(along / loops) * loops;
}

FabricPoint FabricFace::on_edge(std::size_t edge, double angle) const {
    return fabric_->on_edge(edge, stitches_along(edge, angle));
}

FabricPoint FabricFace::point(const SurfacePlace& place) const {
    const auto [edge, up] = level(place.along_mm);
    const FabricPoint below = on_edge(edge, place.angle), above = on_edge(edge + 1, place.angle);
    return {(1 - up) * below.place + up * above.place,
            unit((1 - up) * below.normal + up * above.normal, above.normal)};
}

SurfacePoint FabricFace::at(const SurfacePlace& place) const {
    const FabricPoint here = point(place);
    const auto [edge, up] = level(place.along_mm);
    const double radius = fabric_->girth_radius_mm(edge, up);
    // Differences over half a round each way, and as far around.
    const double step = std::max(1e-6, (along_[edge + 1] - along_[edge]) / 2);
    const double turn = std::min(0.5, step / std::max(radius, 1e-6));
    const FabricPoint low = point({place.along_mm - step, place.angle});
    const FabricPoint high = point({place.along_mm + step, place.angle});
    const FabricPoint left = point({place.along_mm, place.angle - turn});
    const FabricPoint right = point({place.along_mm, place.angle + turn});
    const auto bulge = [](const FabricPoint& from, const FabricPoint& to) {
        const Vec3 way = to.place - from.place;
        return way.squaredNorm() > 0 ? (to.normal - from.normal).dot(way) / way.squaredNorm() : 0;
    };
    SurfacePoint result;
    result.point = here.place;
    result.normal = here.normal;
    const Vec3 along = turned_ * (high.place - low.place);
    result.up = unit(along - along.dot(here.normal) * here.normal, Vec3::UnitY());
    result.right = result.up.cross(here.normal);
    result.height_mm = here.place.y() - lowest_mm_;
    result.radius_mm = radius;
    result.meridian_curvature = bulge(low, high);
    result.round_curvature = bulge(left, right);
    return result;
}

/// The best of the loops' points, then ever smaller steps along and around.
SurfacePlace FabricFace::nearest(const Vec3& wanted) const {
    const auto off = [&](const SurfacePlace& place) { return (point(place).place - wanted).squaredNorm(); };
    SurfacePlace best;
    double least = std::numeric_limits<double>::infinity();
    const auto offer = [&](const SurfacePlace& place) {
        const double found = off(place);
        if (found >= least) return false;
        least = found;
        best = place;
        return true;
    };
    for (const double along : along_)
        for (std::size_t k = 0; k < points_around; ++k)
            offer({along, 2 * pi * (static_cast<double>(k) / points_around - 0.5)});
    double step = end_mm() / static_cast<double>(along_.size()), turn = 2 * pi / points_around;
    for (int halving = 0; halving < 30; ++halving, step /= 2, turn /= 2)
        while (offer({std::min(end_mm(), best.along_mm + step), best.angle}) ||
               offer({std::max(0.0, best.along_mm - step), best.angle}) ||
               offer({best.along_mm, best.angle + turn}) || offer({best.along_mm, best.angle - turn})) {
        }
    best.angle = std::remainder(best.angle, 2 * pi);
    return best;
}

double FabricFace::distance_along_mm(const SurfacePlace& from, const SurfacePlace& to) const {
    std::call_once(measured_, [this] {
        geodesics_ = std::make_unique<MeshGeodesics>(smooth_mesh(surface_, steps_a_round));
    });
    return geodesics_->distance_mm(point(from).place, point(to).place);
}

}  // namespace roundwright
