#include "render/scene/pick.h"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "tests/render/scene/example_surfaces.h"

namespace roundwright::render {
namespace {

// Ray and sphere: t = -b - sqrt(b^2 - c) with b = d.(o - m), c = |o - m|^2 - R^2; elementary geometry. The
// triangles of a sphere of n slices lie within R (1 - cos(pi / n)) below it.
TEST(Pick, MeetsASphereWhereTheQuadraticSays) {
    const Vec3 centre(4, -2, 7);
    constexpr double radius = 25;
    const Mesh mesh = test::sphere_mesh(centre, radius, 96, {90, 90, 90});
    std::mt19937 random(11);
    std::normal_distribution<double> spread;
    int met = 0;
    for (int i = 0; i < 200; ++i) {
        const Vec3 origin = centre + 100 * Vec3(spread(random), spread(random), spread(random)).normalized();
        const Vec3 aim = centre + 14 * Vec3(spread(random), spread(random), spread(random));
        const ViewRay ray{origin, (aim - origin).normalized()};
        const double b = ray.direction.dot(origin - centre);
        const double root = b * b - (origin - centre).squaredNorm() + radius * radius;
        const auto hit = pick(mesh, ray);
        if (root < -40) {
            EXPECT_FALSE(hit);
        }
        if (root < 40) continue;
        ++met;
        ASSERT_TRUE(hit);
        EXPECT_NEAR(hit->distance, -b - std::sqrt(root), 0.25);
        EXPECT_LT((hit->point - centre).norm(), radius + 1e-4);
        EXPECT_GT((hit->point - centre).norm(), radius * std::cos(3.2 / 48));
        EXPECT_NEAR((hit->normal - (hit->point - centre).normalized()).norm(), 0, 0.05);
    }
    EXPECT_GT(met, 100);
}

TEST(Pick, SeesTheInnerSideFromWithin) {
    const Mesh mesh = test::sphere_mesh(Vec3::Zero(), 10, 48, {90, 90, 90});
    const auto hit = pick(mesh, {Vec3::Zero(), Vec3(0.3, 0.5, 0.2).normalized()});
    ASSERT_TRUE(hit);
    EXPECT_NEAR(hit->distance, 10, 0.1);
    EXPECT_LT(hit->normal.dot(hit->point), 0);
}

TEST(Pick, NothingBehindTheOriginCounts) {
    const Mesh mesh = test::sphere_mesh(Vec3::Zero(), 10, 48, {90, 90, 90});
    EXPECT_FALSE(pick(mesh, {Vec3(0, 0, 30), Vec3::UnitZ()}));
    EXPECT_FALSE(pick(Mesh{}, {Vec3::Zero(), Vec3::UnitZ()}));
}

}  // namespace
}  // namespace roundwright::render
