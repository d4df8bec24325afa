#include "core/assembly/rest.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace roundwright {
namespace {

using std::numbers::pi;

constexpr double degrees = 180 / pi;
constexpr int most_rolls = 400;
/// Points of one plane, and of one line, within rounding.
constexpr double exactly_mm = 1e-6;
constexpr double least_weight_g = 0.1, most_weight_g = 2000, weight_step = 1.1;

double cross(const Vec2& a, const Vec2& b) { return a.x() * b.y() - a.y() * b.x(); }

/// On the table: to the right, and to the back, so that it is seen from above anticlockwise.
Vec2 on_table(const Vec3& point) { return {point.x(), -point.z()}; }

/// How far inside a convex polygon a point is; below 0: outside, by the distance to it.
double depth_inside(const std::vector<Vec2>& polygon, const Vec2& at) {
    if (polygon.empty()) return -std::numeric_limits<double>::infinity();
    if (polygon.size() == 1) return -(at - polygon[0]).norm();
    double inside = std::numeric_limits<double>::infinity(), outside = inside;
    for (std::size_t k = 0; k < polygon.size(); ++k) {
        const Vec2& from = polygon[k];
        const Vec2 way = polygon[(k + 1) % polygon.size()] - from;
        const double length = way.norm();
        if (!(length > 0)) continue;
        inside = std::min(inside, cross(way, at - from) / length);
        const double share = std::clamp((at - from).dot(way) / (length * length), 0.0, 1.0);
        outside = std::min(outside, (from + share * way - at).norm());
    }
    return polygon.size() > 2 && inside >= 0 ? inside : -outside;
}

class Roller {
  public:
    Roller(std::span<const Vec3> points, const Vec3& centre) : points_(points), centre_(centre) {}

    /// Rolls over its edges, each time lower, until its centre of mass is above what it rests on.
    [[nodiscard]] Rest roll(Eigen::Matrix3d turn) const {
        for (int k = 0; k < most_rolls; ++k) {
            const Rest rest = set_down(turn, exactly_mm);
            if (rest.stands()) break;
            const auto axis = axis_of(rest);
            const double angle = axis ? angle_to_touch(rest, *axis) : 0;
            if (!(angle > 0)) break;
            turn = Eigen::AngleAxisd(angle, axis->direction).toRotationMatrix() * rest.pose.linear();
        }
        return set_down(turn, fabric_gives_mm);
    }

    [[nodiscard]] Rest set_down(const Eigen::Matrix3d& turn, double gives_mm) const {
        Rest rest;
        rest.pose.linear() = turn;
        double lowest = std::numeric_limits<double>::infinity();
        for (const Vec3& point : points_) lowest = std::min(lowest, turn.row(1).dot(point));
        rest.pose.translation() = Vec3(0, -lowest, 0);
        std::vector<Vec2> touching;
        for (const Vec3& point : points_)
            if (turn.row(1).dot(point) - lowest <= gives_mm) touching.push_back(on_table(rest.pose * point));
        rest.support = convex_hull(std::move(touching));
        rest.centre_of_mass = rest.pose * centre_;
        rest.stable_degrees = stable_degrees(rest, rest.centre_of_mass);
        return rest;
    }

  private:
    /// A line on the table that the toy rolls over, and the way that it falls.
    struct Axis {
        Vec3 point, direction, ahead;
    };

    static std::optional<Axis> axis_of(const Rest& rest) {
        const Vec2 at = on_table(rest.centre_of_mass);
        Vec2 nearest = rest.support.front();
        double least = std::numeric_limits<double>::infinity();
        for (std::size_t k = 0; k < rest.support.size(); ++k) {
            const Vec2& from = rest.support[k];
            const Vec2 way = rest.support[(k + 1) % rest.support.size()] - from;
            const double length = way.squaredNorm();
            const double share = length > 0 ? std::clamp((at - from).dot(way) / length, 0.0, 1.0) : 0;
            const double off = (from + share * way - at).norm();
            if (off >= least) continue;
            least = off;
            nearest = from + share * way;
        }
        Vec2 ahead = at - nearest;
        if (!(ahead.norm() > 1e-9)) return std::nullopt;
        ahead.normalize();
        const Vec3 forward(ahead.x(), 0, -ahead.y());
        // Turning about y x forward takes the top ahead.
        return Axis{{nearest.x(), 0, -nearest.y()}, Vec3::UnitY().cross(forward), forward};
    }

    /// The least turn at which another point comes down to the table.
    [[nodiscard]] double angle_to_touch(const Rest& rest, const Axis& axis) const {
        double least = pi;
        for (const Vec3& point : points_) {
            const Vec3 off = rest.pose * point - axis.point;
            const double ahead = off.dot(axis.ahead), up = off.y();
            if (ahead <= exactly_mm) continue;
            const double angle = std::atan2(up, ahead);
            if (angle > 1e-9) least = std::min(least, angle);
        }
        return least < pi ? least : 0;
    }

    std::span<const Vec3> points_;
    Vec3 centre_;
};

}  // namespace

std::vector<Vec2> convex_hull(std::vector<Vec2> points) {
    std::ranges::sort(points, [](const Vec2& a, const Vec2& b) {
        return a.x() < b.x() || (a.x() == b.x() && a.y() < b.y());
    });
    points.erase(std::unique(points.begin(), points.end()), points.end());
    if (points.size() < 3) return points;
    std::vector<Vec2> hull;
    const auto add = [&](const Vec2& point, std::size_t least) {
        while (hull.size() >= least + 2 &&
               cross(hull.back() - hull[hull.size() - 2], point - hull.back()) <= 0)
            hull.pop_back();
        hull.push_back(point);
    };
    for (const Vec2& point : points) add(point, 0);
    const std::size_t lower = hull.size() - 1;
    for (std::size_t k = points.size() - 1; k-- > 0;) add(points[k], lower);
    hull.pop_back();
    return hull;
}

double stable_degrees(const Rest& rest, const Vec3& centre) {
    const double inside = depth_inside(rest.support, on_table(centre));
    return std::atan2(inside, std::max(centre.y(), 1e-9)) * degrees;
}

Rest rest_of(std::span<const Vec3> points, const Vec3& centre_of_mass, Stance stance) {
    if (points.empty()) return {};
    const Roller roller(points, centre_of_mass);
    const Eigen::Matrix3d upright = Eigen::Matrix3d::Identity();
    switch (stance) {
        case Stance::standing:
            return roller.set_down(upright, fabric_gives_mm);
        case Stance::sitting:
            return roller.roll(upright);
        case Stance::lying:
            return roller.roll(Eigen::AngleAxisd(-pi / 2, Vec3::UnitX()).toRotationMatrix());
    }
    return {};
}

double pellet_bag_radius_mm(double grams) {
    const double mm3 = std::max(grams, 0.0) * 1e6 / pellets_kg_per_m3;
    return std::cbrt(3 * mm3 / (4 * pi));
}

std::optional<double> weight_to_hold_g(const Rest& rest, double toy_grams, double wanted) {
    if (rest.support.size() < 3 || !(toy_grams > 0)) return std::nullopt;
    Vec2 middle = Vec2::Zero();
    for (const Vec2& corner : rest.support) middle += corner / static_cast<double>(rest.support.size());
    const auto holds = [&](double grams) {
        const Vec3 bag(middle.x(), pellet_bag_radius_mm(grams), -middle.y());
        const Vec3 centre = (toy_grams * rest.centre_of_mass + grams * bag) / (toy_grams + grams);
        return stable_degrees(rest, centre) >= wanted;
    };
    if (holds(0)) return 0;
    double high = least_weight_g;
    while (!holds(high))
        if ((high *= weight_step) > most_weight_g) return std::nullopt;
    double low = high > least_weight_g ? high / weight_step : 0;
    for (int halving = 0; halving < 60; ++halving) (holds((low + high) / 2) ? high : low) = (low + high) / 2;
    return high;
}

}  // namespace roundwright
