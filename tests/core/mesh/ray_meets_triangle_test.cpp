#include <gtest/gtest.h>

#include "core/mesh/ray_cast.h"

namespace roundwright {
namespace {

/// In the plane z = 2: a right angle at (1, 1), 4 to the right and 3 upwards.
const std::array<Vec3, 3> triangle{Vec3(1, 1, 2), Vec3(5, 1, 2), Vec3(1, 4, 2)};

std::optional<RayHit> down_at(double x, double y) { return meet({Vec3(x, y, 7), Vec3(0, 0, -2)}, triangle); }

TEST(RayMeetsTriangle, InItsMiddleWithShares) {
    const auto hit = down_at(2, 2.5);
    ASSERT_TRUE(hit);
    EXPECT_DOUBLE_EQ(hit->t, 2.5);
    EXPECT_DOUBLE_EQ(hit->u, 0.25);
    EXPECT_DOUBLE_EQ(hit->v, 0.5);
}

TEST(RayMeetsTriangle, FromTheOtherSideToo) {
    const auto hit = meet({Vec3(2, 2.5, 0), Vec3(0, 0, 4)}, triangle);
    ASSERT_TRUE(hit);
    EXPECT_DOUBLE_EQ(hit->t, 0.5);
}

TEST(RayMeetsTriangle, OnItsEdgesAndCornersAndNotBesideThem) {
    for (const auto& [x, y] :
         std::vector<std::pair<double, double>>{{1, 1}, {5, 1}, {1, 4}, {3, 1}, {1, 2}, {3, 2.5}})
        EXPECT_TRUE(down_at(x, y)) << x << ' ' << y;
    constexpr double aside = 1e-9;
    for (const auto& [x, y] : std::vector<std::pair<double, double>>{
             {1 - aside, 2}, {3, 1 - aside}, {5 + aside, 1}, {1, 4 + aside}, {3 + aside, 2.5 + aside}})
        EXPECT_FALSE(down_at(x, y)) << x << ' ' << y;
}

TEST(RayMeetsTriangle, NotBehindItsBeginningNorBesideThePlane) {
    EXPECT_FALSE(meet({Vec3(2, 2, 7), Vec3(0, 0, 1)}, triangle));
    EXPECT_FALSE(meet({Vec3(2, 2, 2), Vec3(0, 0, 1)}, triangle));  // begins on it
    EXPECT_FALSE(meet({Vec3(0, 2, 2), Vec3(1, 0, 0)}, triangle));  // lies in its plane
    EXPECT_FALSE(meet({Vec3(0, 2, 3), Vec3(1, 0, 0)}, triangle));
}

/// Two triangles in one place, and a third behind them.
Mesh stacked() {
    Mesh mesh;
    for (const float z : {2.0F, 2.0F, 1.0F})
        for (const auto& [x, y] : std::vector<std::pair<float, float>>{{1, 1}, {5, 1}, {1, 4}}) {
            mesh.positions.insert(mesh.positions.end(), {x, y, z});
            mesh.normals.insert(mesh.normals.end(), {0, 0, 1});
        }
    mesh.indices = {0, 1, 2, 3, 4, 5, 6, 7, 8};
    mesh.stitch_of_triangle = {7, 8, 9};
    return mesh;
}

TEST(RayMeetsMesh, OfSeveralInOnePlaceTheFirst) {
    const RayCaster caster(stacked());
    for (const auto& hit : {caster.first_hit({Vec3(2, 2, 9), Vec3(0, 0, -1)}),
                            first_hit_by_trying_all(stacked(), {Vec3(2, 2, 9), Vec3(0, 0, -1)})}) {
        ASSERT_TRUE(hit);
        EXPECT_EQ(hit->triangle, 0U);
        EXPECT_EQ(hit->stitch, 7);
        EXPECT_TRUE(hit->from_outside);
        EXPECT_DOUBLE_EQ(hit->t, 7);
        EXPECT_EQ(hit->point, Vec3(2, 2, 2));
        EXPECT_EQ(hit->normal, Vec3(0, 0, 1));
    }
    const auto from_below = caster.first_hit({Vec3(2, 2, -9), Vec3(0, 0, 1)});
    ASSERT_TRUE(from_below);
    EXPECT_EQ(from_below->triangle, 2U);
    EXPECT_EQ(from_below->stitch, 9);
    EXPECT_FALSE(from_below->from_outside);
}

/// The mean of the corners' normals by their shares; the triangle's own where they cancel out or are missing.
TEST(RayMeetsMesh, TheNormalIsBetweenThoseOfTheCorners) {
    Mesh mesh = stacked();
    mesh.normals = {1, 0, 0, 0, 1, 0, 0, 0, 1, 1, 0, 0, 0, 1, 0, 0, 0, 1, 1, 0, 0, 0, 1, 0, 0, 0, 1};
    const Ray ray{Vec3(2, 2.5, 9), Vec3(0, 0, -1)};
    const auto hit = RayCaster(mesh).first_hit(ray);
    ASSERT_TRUE(hit);
    EXPECT_LT((hit->normal - Vec3(0.25, 0.25, 0.5).normalized()).norm(), 1e-6);
    mesh.normals.assign(27, 0);
    EXPECT_EQ(RayCaster(mesh).first_hit(ray)->normal, Vec3(0, 0, 1));
    mesh.normals.clear();
    mesh.stitch_of_triangle.clear();
    const auto bare = RayCaster(mesh).first_hit(ray);
    EXPECT_EQ(bare->normal, Vec3(0, 0, 1));
    EXPECT_EQ(bare->stitch, -1);
}

}  // namespace
}  // namespace roundwright
