#include "core/assembly/edge_bend.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

namespace roundwright {
namespace {

using std::numbers::pi;

/// For the derivative of what a flattened edge does.
constexpr double small_step_mm = 0.05;

double falloff(double t) { return t >= 1 ? 0 : (1 - t) * (1 - t) * (1 + 2 * t); }
double falloff_derivative(double t) { return t >= 1 ? 0 : -6 * t * (1 - t); }

}  // namespace

EdgeBend::EdgeBend(const SolvedPiece& piece, JoinedEnd end, std::vector<Vec3> edge, std::vector<Vec3> shifts)
    : shifts_(std::move(shifts)), first_angle_(piece.piece->face_degrees * pi / 180) {
    for (const Vec3& shift : shifts_) mean_ += shift / static_cast<double>(shifts_.size());
    const auto& loops = piece.measures.loops;
    radius_mm_ = (end == JoinedEnd::start ? loops.front() : loops.back()).radius_mm;
    reach_mm_ = 2 * radius_mm_;
    profile_ = FabricProfile(piece, end, reach_mm_);
    if (piece.measures.flattened) edge_ = std::move(edge);
}

double EdgeBend::distance_mm(const Vec3& point) const {
    if (!edge_.empty()) return std::abs(point.y() - profile_.height_mm());
    return profile_.nearest(point).distance_mm;
}

EdgeBend::Shift EdgeBend::around(const Vec3& point) const {
    const double radius = std::sqrt(point.x() * point.x() + point.z() * point.z());
    if (!(radius > 0) || !(radius_mm_ > 0)) return {mean_, Eigen::Matrix3d::Zero()};
    const double turns = (std::atan2(point.x(), point.z()) - first_angle_) / (2 * pi);
    const auto count = static_cast<double>(shifts_.size());
    const double place = (turns - std::floor(turns)) * count;
    const auto before = static_cast<std::size_t>(place) % shifts_.size();
    const double share = place - std::floor(place);
    const Vec3& from = shifts_[before];
    const Vec3 step = shifts_[(before + 1) % shifts_.size()] - from;
    const Vec3 aside = from + share * step - mean_;
    const double inside = std::min(1.0, radius / radius_mm_);
    const Vec3 outwards(point.x() / radius, 0, point.z() / radius);
    const Vec3 onwards(outwards.z(), 0, -outwards.x());  // towards growing angles
    Shift found;
    found.by = mean_ + inside * aside;
    found.derivative = inside * count / (2 * pi * radius) * step * onwards.transpose();
    if (radius < radius_mm_) found.derivative += aside * outwards.transpose() / radius_mm_;
    return found;
}

/// Between the points on either side of the nearest: the shift of a point of a flattened edge.
Vec3 EdgeBend::of_nearest(const Vec3& point) const {
    Vec3 level = point;
    level.y() = edge_.front().y();
    double least = std::numeric_limits<double>::infinity();
    Vec3 found = mean_;
    for (std::size_t k = 0; k < edge_.size(); ++k) {
        const Vec3& from = edge_[k];
        const std::size_t next = (k + 1) % edge_.size();
        const Vec3 way = edge_[next] - from;
        const double length = way.squaredNorm();
        const double share = length > 0 ? std::clamp((level - from).dot(way) / length, 0.0, 1.0) : 0;
        const double off = (from + share * way - level).squaredNorm();
        if (off >= least) continue;
        least = off;
        found = (1 - share) * shifts_[k] + share * shifts_[next];
    }
    return found;
}

Vec3 EdgeBend::shift(const Vec3& point) const {
    const double distance = distance_mm(point);
    if (!(distance < reach_mm_)) return Vec3::Zero();
    return falloff(distance / reach_mm_) * (edge_.empty() ? around(point).by : of_nearest(point));
}

EdgeBend::Shift EdgeBend::by_differences(const Vec3& point) const {
    Shift found{shift(point)};
    for (int axis = 0; axis < 3; ++axis) {
        Vec3 step = Vec3::Zero();
        step[axis] = small_step_mm;
        found.derivative.col(axis) = (shift(point + step) - shift(point - step)) / (2 * small_step_mm);
    }
    return found;
}

/// f(d(p) / R) S(p): by the product rule, with the profile's slope for d.
EdgeBend::Shift EdgeBend::shift_with_derivative(const Vec3& point) const {
    if (!edge_.empty()) return by_differences(point);
    const FabricProfile::Spot spot = profile_.nearest(point);
    if (!(spot.distance_mm < reach_mm_)) return {};
    const double t = spot.distance_mm / reach_mm_, weight = falloff(t);
    const double radius = std::sqrt(point.x() * point.x() + point.z() * point.z());
    const double out = radius > 0 ? spot.along.x() / radius : 0;
    const Vec3 distance(out * point.x(), spot.along.y(), out * point.z());
    const Shift whole = around(point);
    Shift found{weight * whole.by, weight * whole.derivative};
    found.derivative += falloff_derivative(t) / reach_mm_ * whole.by * distance.transpose();
    return found;
}

}  // namespace roundwright
