#include "core/face/small_parts.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "core/base/vec.h"

namespace roundwright {

namespace {

using std::numbers::pi;

constexpr double radius_mm = small_parts_diameter_mm / 2;
// The base falls by the difference of the depths over the diameter; x runs from the shallow side to the deep
// one.
constexpr double base_slope =
    (small_parts_most_depth_mm - small_parts_least_depth_mm) / small_parts_diameter_mm;
constexpr double tolerance_mm = 1e-9;

std::vector<Vec3> rim_points(const RigidPart& part) {
    constexpr int around = 48;
    std::vector<Vec3> points;
    for (int k = 0; k < around; ++k) {
        const double angle = 2 * pi * k / around;
        const double x = part.width_mm / 2 * std::cos(angle);
        const double y = part.height_mm / 2 * std::sin(angle);
        points.emplace_back(x, y, -part.thickness_mm / 2);
        points.emplace_back(x, y, part.thickness_mm / 2);
    }
    return points;
}

/// Furthest that the part, held in this orientation, can be pushed to the deep side at this y; nothing (-inf)
/// where it touches the wall all the same. Every point must stay within the circle.
double furthest_x(const std::vector<Vec3>& points, double y) {
    double most = std::numeric_limits<double>::infinity();
    double least = -most;
    for (const Vec3& p : points) {
        const double half = radius_mm * radius_mm - (p.y() + y) * (p.y() + y);
        if (half < -tolerance_mm) return -std::numeric_limits<double>::infinity();
        const double reach = std::sqrt(std::max(0.0, half));
        most = std::min(most, reach - p.x());
        least = std::max(least, -reach - p.x());
    }
    return least > most + tolerance_mm ? -std::numeric_limits<double>::infinity() : most;
}

/// With the part pushed x to the deep side and resting on the base: does its top stay below the rim?
bool below_rim(const std::vector<Vec3>& points, double x) {
    double lift = -std::numeric_limits<double>::infinity();
    double top = lift;
    for (const Vec3& p : points) {
        const double base = base_slope * (radius_mm - (p.x() + x));  // above the deepest point of the base
        lift = std::max(lift, base - p.z());
        top = std::max(top, p.z());
    }
    return lift + top <= small_parts_most_depth_mm + tolerance_mm;
}

bool fits_so(const std::vector<Vec3>& points) {
    // The circle is convex and the base depends on x only, so of all places across, a few about the middle
    // suffice.
    constexpr int across = 9;
    for (int k = 0; k < across; ++k) {
        const double y = radius_mm * (2.0 * k / (across - 1) - 1) / 2;
        const double x = furthest_x(points, y);
        if (std::isfinite(x) && below_rim(points, x)) return true;
    }
    return false;
}

std::vector<Vec3> turned(const std::vector<Vec3>& points, double spin, double tilt, double heading) {
    const Eigen::Matrix3d turn =
        (Eigen::AngleAxisd(heading, Vec3::UnitZ()) * Eigen::AngleAxisd(tilt, Vec3::UnitY()) *
         Eigen::AngleAxisd(spin, Vec3::UnitZ()))
            .toRotationMatrix();
    std::vector<Vec3> result;
    result.reserve(points.size());
    for (const Vec3& point : points) result.push_back(turn * point);
    return result;
}

}  // namespace

bool has_rigid_part(FeatureKind kind) {
    return kind == FeatureKind::safety_eye || kind == FeatureKind::safety_nose ||
           kind == FeatureKind::felt_disc;
}

RigidPart rigid_part(const Feature& feature) {
    constexpr double felt_mm = 1;
    const double dome = std::min(feature.width_mm, feature.height_mm) / 2;
    return {feature.width_mm, feature.height_mm, feature.kind == FeatureKind::felt_disc ? felt_mm : dome};
}

bool fits_small_parts_cylinder(const RigidPart& part) {
    const std::vector<Vec3> points = rim_points(part);
    constexpr int tilts = 180;
    constexpr int headings = 8;
    // Spin matters only for a part that is not round, heading only for one that is tilted.
    const int spins = part.width_mm == part.height_mm ? 1 : 12;
    for (int spin = 0; spin < spins; ++spin) {
        for (int tilt = 0; tilt <= tilts; ++tilt) {
            for (int heading = 0; heading < (tilt == 0 ? 1 : headings); ++heading) {
                if (fits_so(turned(points, pi * spin / spins, pi / 2 * tilt / tilts,
                                   2 * pi * heading / headings))) {
                    return true;
                }
            }
        }
    }
    return false;
}

}  // namespace roundwright
