#include "core/shape/loop_section.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright {

namespace {

using std::numbers::pi;

constexpr double hardly_bent = 1e-9;

/// A point of the stadium before it is bent: along the layer and to the front, with its normal.
struct Flat {
    double along = 0, front = 0;
    double normal_along = 0, normal_front = 1;
};

/// From the middle of the front by so much of the way around, in [-1/2, 1/2].
Flat on_stadium(const LoopSection& section, double share) {
    const double b = section.half_depth_mm;
    const double straight = section.half_width_mm - b;
    const double side = share < 0 ? -1 : 1;
    const double way = std::abs(share) * section.length_mm();
    if (way <= straight) return {side * way, b, 0, 1};
    const double turn = b > 0 ? (way - straight) / b : pi;
    if (turn >= pi) return {side * (straight - (way - straight - pi * b)), -b, 0, -1};
    const double sine = std::sin(turn);
    const double cosine = std::cos(turn);
    return {side * (straight + b * sine), b * cosine, side * sine, cosine};
}

}  // namespace

double LoopSection::length_mm() const { return 2 * pi * half_depth_mm + 4 * (half_width_mm - half_depth_mm); }

double LoopSection::area_mm2() const {
    return pi * half_depth_mm * half_depth_mm + 4 * half_depth_mm * (half_width_mm - half_depth_mm);
}

double LoopSection::reach_mm() const {
    const double k = std::abs(curvature());
    return k > hardly_bent && std::abs(bend) > pi ? 1 / k : fold().x();
}

double LoopSection::highest_mm() const { return std::max(0.0, fold().y()); }

double LoopSection::lowest_mm() const { return std::min(0.0, fold().y()); }

Vec2 LoopSection::fold() const { return on_line(1); }

Vec2 LoopSection::on_line(double share) const {
    const double k = curvature();
    const double along = share * half_width_mm;
    if (std::abs(k) <= hardly_bent) return {along, 0};
    return {std::sin(k * along) / k, (std::cos(k * along) - 1) / k};
}

SectionPoint point_on(const LoopSection& section, double angle, double lift_mm, double factor) {
    Flat at = on_stadium(section, std::remainder(angle, 2 * pi) / (2 * pi));
    at.along = factor * (at.along + lift_mm * at.normal_along);
    at.front = factor * (at.front + lift_mm * at.normal_front);
    const double k = section.curvature();
    if (std::abs(k) <= hardly_bent) return {{at.along, 0, at.front}, {at.normal_along, 0, at.normal_front}};
    const double sine = std::sin(k * at.along);
    const double cosine = std::cos(k * at.along);
    return {{sine / k, (cosine - 1) / k, at.front},
            {at.normal_along * cosine, -at.normal_along * sine, at.normal_front}};
}

double nearest_angle(const LoopSection& section, const Vec3& point) {
    const double length = section.length_mm();
    if (!(length > 0)) return std::atan2(point.x(), point.z());
    const double k = section.curvature();
    const double along =
        std::abs(k) > hardly_bent ? std::atan2(k * point.x(), 1 + k * point.y()) / k : point.x();
    const double straight = section.half_width_mm - section.half_depth_mm;
    double way = std::abs(along);
    if (way > straight) {
        way = straight + section.half_depth_mm * std::atan2(way - straight, point.z());
    } else if (point.z() < 0) {
        way = length / 2 - way;
    }
    return std::copysign(std::min(2 * pi * way / length, pi), along);
}

LoopSection between(const LoopSection& from, const LoopSection& to, double share) {
    const auto mean = [share](double a, double b) { return (1 - share) * a + share * b; };
    return {mean(from.half_width_mm, to.half_width_mm), mean(from.half_depth_mm, to.half_depth_mm),
            mean(from.bend, to.bend)};
}

}  // namespace roundwright
