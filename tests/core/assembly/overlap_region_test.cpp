#include "core/assembly/overlap_region.h"

#include <gtest/gtest.h>
#include <numbers>

#include "tests/core/assembly/handbook_solids.h"

namespace roundwright {
namespace {

using std::numbers::pi;

constexpr double radius = 20, apart = 30;

Solid left() { return test::ball(radius, Vec3::Zero(), 48); }
Solid right() { return test::ball(radius, Vec3(apart, 0, 0), 48); }

/// Lens of two equal balls: pi (4 r + d) (2 r - d)^2 / 12 (E. W. Weisstein, Sphere-Sphere Intersection,
/// MathWorld).
double lens_mm3() { return pi * (4 * radius + apart) * (2 * radius - apart) * (2 * radius - apart) / 12; }

double volume_of(const OverlapRegion& region) { return measure_volume(solid_of(region.inside)).volume_mm3; }

TEST(OverlapRegion, OfTwoBallsIsTheirLens) {
    const OverlapRegion region = overlap_region(left(), right());
    EXPECT_NEAR(volume_of(region), lens_mm3(), 0.02 * lens_mm3());
    ASSERT_EQ(region.lines.size(), 1u);
    const auto& circle = region.lines.front();
    EXPECT_EQ(circle.front(), circle.back());
    double length = 0;
    for (std::size_t k = 0; k < circle.size(); ++k) {
        EXPECT_NEAR(circle[k].x(), apart / 2, 0.1);
        EXPECT_NEAR(std::hypot(circle[k].y(), circle[k].z()), std::sqrt(175.0), 0.1);
        if (k > 0) length += (circle[k] - circle[k - 1]).norm();
    }
    EXPECT_NEAR(length, 2 * pi * std::sqrt(175.0), 0.5);
}

TEST(OverlapRegion, OfTwoThatAreApartIsEmpty) {
    const OverlapRegion region = overlap_region(left(), test::ball(radius, Vec3(41, 0, 0), 48));
    EXPECT_EQ(region.inside.triangle_count(), 0u);
    EXPECT_TRUE(region.lines.empty());
    EXPECT_TRUE(overlap_region(left(), Solid{}).lines.empty());
}

TEST(OverlapRegion, KeepsAsMuchAsIsAskedForFarFromTheSeam) {
    const Vec3 from(apart / 2, -std::sqrt(175.0), 0);
    const OverlapRegion all = overlap_region(left(), right(), &from, 2 * lens_mm3());
    EXPECT_NEAR(volume_of(all), lens_mm3(), 0.02 * lens_mm3());
    const OverlapRegion half = overlap_region(left(), right(), &from, lens_mm3() / 2);
    double nearest = 1e9;
    ASSERT_GT(half.inside.triangle_count(), 0u);
    for (std::size_t k = 0; k + 2 < half.inside.positions.size(); k += 3) {
        const Vec3 point(half.inside.positions[k], half.inside.positions[k + 1],
                         half.inside.positions[k + 2]);
        nearest = std::min(nearest, (point - from).norm());
    }
    // Half of the lens lies beyond the plane through its middle; the distance is measured round the seam.
    EXPECT_GT(nearest, std::sqrt(175.0) / 2);
    EXPECT_LT(nearest, std::sqrt(175.0) * 1.2);
    ASSERT_EQ(half.lines.size(), 1u);
    EXPECT_NE(half.lines.front().front(), half.lines.front().back());
}

TEST(OverlapRegion, PointsAlongALineAreEvenlySpaced) {
    const std::vector<Vec3> square{{0, 0, 0}, {10, 0, 0}, {10, 10, 0}, {0, 10, 0}, {0, 0, 0}};
    const auto around = spaced_along(square, 4);
    ASSERT_EQ(around.size(), 10u);
    for (std::size_t k = 1; k < around.size(); ++k) EXPECT_LE((around[k] - around[k - 1]).norm(), 4 + 1e-9);
    EXPECT_EQ(spaced_along({{0, 0, 0}, {9, 0, 0}}, 4).size(), 4u);
    EXPECT_EQ(spaced_along({{1, 2, 3}}, 4).size(), 1u);
}

}  // namespace
}  // namespace roundwright
