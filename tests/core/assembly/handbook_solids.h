#pragma once

#include <cmath>
#include <cstdint>
#include <functional>
#include <numbers>

#include "core/assembly/solid.h"

namespace roundwright::test {

/// The solid of revolution of a profile (radius over height, from below to above, on the axis at both ends).
inline Solid revolved(const std::vector<Vec2>& profile, std::uint32_t around = 96,
                      const Vec3& at = Vec3::Zero()) {
    Solid solid;
    for (const Vec2& level : profile)
        for (std::uint32_t k = 0; k < around; ++k) {
            const double angle = -2 * std::numbers::pi * k / around;
            solid.points.push_back(at +
                                   Vec3(level.x() * std::sin(angle), level.y(), level.x() * std::cos(angle)));
        }
    for (std::uint32_t row = 0; row + 1 < profile.size(); ++row)
        for (std::uint32_t k = 0; k < around; ++k) {
            const std::uint32_t a = row * around + k, b = row * around + (k + 1) % around;
            solid.triangles.push_back({a, a + around, b});
            solid.triangles.push_back({b, a + around, b + around});
        }
    return solid;
}

inline Solid ball(double radius, const Vec3& at = Vec3::Zero(), int steps = 96) {
    std::vector<Vec2> profile;
    for (int k = 0; k <= steps; ++k) {
        const double angle = std::numbers::pi * k / steps;
        profile.emplace_back(radius * std::sin(angle), -radius * std::cos(angle));
    }
    return revolved(profile, static_cast<std::uint32_t>(2 * steps), at);
}

inline Solid cone(double radius, double height, std::uint32_t around = 192) {
    return revolved({{0, 0}, {radius, 0}, {0, height}}, around);
}

/// The part of a ball above a plane, `height` high, its flat side at y = 0.
inline Solid cap(double radius, double height, int steps = 96) {
    const double widest = std::acos((radius - height) / radius);
    std::vector<Vec2> profile{{0, 0}};
    for (int k = 0; k <= steps; ++k) {
        const double angle = widest * (1 - static_cast<double>(k) / steps);
        profile.emplace_back(radius * std::sin(angle), radius * std::cos(angle) - (radius - height));
    }
    return revolved(profile, 192);
}

inline Solid torus(double big, double small, int steps = 96) {
    std::vector<Vec2> profile;
    for (int k = 0; k <= steps; ++k) {
        const double angle = 2 * std::numbers::pi * k / steps;
        profile.emplace_back(big - small * std::cos(angle), -small * std::sin(angle));
    }
    return revolved(profile, 192);
}

inline Solid box(const Vec3& low, const Vec3& high) {
    Solid solid;
    for (int i = 0; i < 8; ++i)
        solid.points.emplace_back(i & 1 ? high.x() : low.x(), i & 2 ? high.y() : low.y(),
                                  i & 4 ? high.z() : low.z());
    solid.triangles = {{0, 2, 1}, {1, 2, 3}, {4, 5, 6}, {5, 7, 6}, {0, 1, 4}, {1, 5, 4},
                       {2, 6, 3}, {3, 6, 7}, {0, 4, 2}, {2, 4, 6}, {1, 3, 5}, {3, 7, 5}};
    return solid;
}

}  // namespace roundwright::test
