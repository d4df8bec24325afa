#include "core/assembly/rest.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "tests/core/assembly/handbook_solids.h"

namespace roundwright {
namespace {

using std::numbers::pi;

double degrees(double radians) { return radians * 180 / pi; }

std::vector<Vec3> corners(const Vec3& low, const Vec3& high) { return test::box(low, high).points; }

TEST(ConvexHull, LeavesOutWhatIsInsideAndOnItsEdges) {
    const auto hull = convex_hull({{0, 0}, {2, 0}, {1, 0}, {2, 2}, {0, 2}, {1, 1}, {0, 0}});
    ASSERT_EQ(hull.size(), 4u);
    double area = 0;
    for (std::size_t k = 0; k < 4; ++k)
        area += hull[k].x() * hull[(k + 1) % 4].y() - hull[k].y() * hull[(k + 1) % 4].x();
    EXPECT_NEAR(area / 2, 4, 1e-12);
}

// A box 20 wide, 40 high, 30 deep, evenly filled: it tips about an edge of its base at atan(10 / 20).
TEST(RestOnATable, ABoxTipsWhereItsDiagonalIsUpright) {
    const auto box = corners({-10, 0, -15}, {10, 40, 15});
    const Rest rest = rest_of(box, {0, 20, 0}, Stance::standing);
    EXPECT_NEAR(rest.stable_degrees, degrees(std::atan2(10, 20)), 1e-9);
    EXPECT_TRUE(rest.stands());
    EXPECT_NEAR(rest.pose.translation().y(), 0, 1e-12);
}

// The same box with its centre of mass off to one side: at 9.9 it stands by atan(0.1 / 20), at 10.1 it tips.
TEST(RestOnATable, StandsOnOneSideOfTheEdgeAndTipsOnTheOther) {
    const auto box = corners({-10, 0, -15}, {10, 40, 15});
    EXPECT_NEAR(rest_of(box, {9.9, 20, 0}, Stance::standing).stable_degrees, degrees(std::atan2(0.1, 20)),
                1e-9);
    const Rest tips = rest_of(box, {10.1, 20, 0}, Stance::standing);
    EXPECT_FALSE(tips.stands());
    EXPECT_NEAR(tips.stable_degrees, -degrees(std::atan2(0.1, 20)), 1e-9);
}

// Four feet at the corners of a square: the support is the square, not the feet alone.
TEST(RestOnATable, StandsWithinItsFeet) {
    std::vector<Vec3> points = corners({-20, 30, -20}, {20, 50, 20});
    for (const double x : {-15.0, 15.0})
        for (const double z : {-15.0, 15.0}) points.emplace_back(x, 0, z);
    const Rest rest = rest_of(points, {0, 40, 0}, Stance::standing);
    EXPECT_EQ(rest.support.size(), 4u);
    EXPECT_NEAR(rest.stable_degrees, degrees(std::atan2(15, 40)), 1e-9);
}

TEST(RestOnATable, ABallStandsOnWhatItsFabricGives) {
    // The cap that 1 mm of giving flattens has a radius of sqrt(2 R - 1).
    const Rest rest = rest_of(test::ball(40, {0, 40, 0}, 400).points, {0, 40, 0}, Stance::standing);
    EXPECT_NEAR(rest.stable_degrees, degrees(std::atan2(std::sqrt(79), 40)), 1);
}

// A wedge that leans out over its back, and its centre of mass with it, falls onto that back.
TEST(RestOnATable, SittingFallsUntilItRests) {
    std::vector<Vec3> points;
    for (const double x : {-10.0, 10.0})
        for (const Vec3& corner : {Vec3(x, 0, 0), Vec3(x, 0, 5), Vec3(x, 40, 5), Vec3(x, 40, -20)})
            points.push_back(corner);
    const Rest rest = rest_of(points, {0, 25, -4}, Stance::sitting);
    EXPECT_TRUE(rest.stands());
    const double fallen = degrees(std::acos((rest.pose.linear() * Vec3::UnitY()).y()));
    EXPECT_NEAR(fallen, degrees(std::atan2(40, 20)), 1e-6);
    EXPECT_FALSE(rest_of(points, {0, 25, -4}, Stance::standing).stands());
}

// A triangle in profile, its right angle below at the front: with its centre of mass behind it leans back
// about its lower back corner until its long side meets the table: by the angle of that side.
TEST(RestOnATable, SittingLeansUntilItMeetsTheTable) {
    std::vector<Vec3> points;
    for (const double x : {-10.0, 10.0}) {
        points.emplace_back(x, 0, 20);
        points.emplace_back(x, 0, 0);
        points.emplace_back(x, 10, -30);
        points.emplace_back(x, 40, 10);
    }
    const Rest rest = rest_of(points, {0, 15, -2}, Stance::sitting);
    EXPECT_TRUE(rest.stands());
    const double leant = degrees(std::acos((rest.pose.linear() * Vec3::UnitY()).y()));
    EXPECT_NEAR(leant, degrees(std::atan2(10, 30)), 1e-6);
}

TEST(RestOnATable, LyingIsOnItsBack) {
    const Rest rest = rest_of(corners({-10, 0, -5}, {10, 40, 5}), {0, 20, 0}, Stance::lying);
    EXPECT_NEAR((rest.pose.linear() * Vec3::UnitZ()).y(), 1, 1e-9);
    EXPECT_TRUE(rest.stands());
}

TEST(RestOnATable, ABallThatIsHeavyBelowRightsItself) {
    const Rest rest = rest_of(test::ball(40).points, {0, -20, 0}, Stance::lying);
    EXPECT_TRUE(rest.stands());
    EXPECT_GT((rest.pose.linear() * Vec3::UnitY()).y(), std::cos(5 * pi / 180));
}

TEST(RestOnATable, NothingIsNothing) {
    EXPECT_FALSE(rest_of({}, Vec3::Zero(), Stance::standing).stands());
    EXPECT_FALSE(rest_of(std::vector<Vec3>{{1, 2, 3}}, Vec3(5, 2, 3), Stance::sitting).stands());
}

// A box of 100 g, 40 deep, its centre of mass 60 high and 14 in front of its middle. With m grams in a bag
// whose middle is y high the centre is at (1400, 6000 + m y) / (100 + m), so that 10 degrees need
// 20 - 1400 / (100 + m) = tan 10 (6000 + m y) / (100 + m).
TEST(WeightToHold, IsTheOneThatTheMomentsSay) {
    const auto box = corners({-40, 0, -20}, {40, 120, 20});
    const Rest rest = rest_of(box, {0, 60, 14}, Stance::standing);
    EXPECT_LT(rest.stable_degrees, 10);
    const auto grams = weight_to_hold_g(rest, 100, 10);
    ASSERT_TRUE(grams);
    const double y = pellet_bag_radius_mm(*grams);
    const double left = 20 - 1400 / (100 + *grams);
    EXPECT_NEAR(left, std::tan(pi / 18) * (6000 + *grams * y) / (100 + *grams), 1e-6);
}

TEST(WeightToHold, IsNoneWhereItStandsAndNothingWhereNothingWould) {
    const auto box = corners({-40, 0, -40}, {40, 20, 40});
    EXPECT_EQ(weight_to_hold_g(rest_of(box, {0, 10, 0}, Stance::standing), 100, 10), 0);
    const std::vector<Vec3> edge{{0, 0, 0}, {1, 0, 0}, {0, 50, 0}};
    EXPECT_FALSE(weight_to_hold_g(rest_of(edge, {0, 25, 0}, Stance::standing), 100, 10));
}

TEST(WeightToHold, ABagOfPelletsIsABallOfThem) {
    EXPECT_NEAR(4.0 / 3 * pi * std::pow(pellet_bag_radius_mm(56), 3), 1e5, 1e-6);
}

}  // namespace
}  // namespace roundwright
