#include "core/shape/meridian.h"

#include <gtest/gtest.h>
#include <numbers>

#include "core/shape/cold_start.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

constexpr double two_pi = 2 * std::numbers::pi;

TEST(Meridian, HasANodeALoopAndAPoleADrawnEnd) {
    ShapeProblem problem = piece_of({6, 12, 10}, 0, MeridianEnd::drawn_closed);
    Meridian meridian = meridian_of(problem);
    EXPECT_EQ(meridian.rest_loop, (std::vector<double>{0, 30, 60, 50, 0}));
    EXPECT_EQ(meridian.rest_height, (std::vector<double>{5, 5, 5, 2.5}));
    EXPECT_TRUE(meridian.on_axis(0) && meridian.on_axis(4));
    EXPECT_FALSE(meridian.on_axis(1) || meridian.on_axis(3));
    EXPECT_EQ(node_of_first_loop(problem), 0U);
    problem.first = MeridianEnd::drawn_closed;
    problem.last = MeridianEnd::open;
    problem.rest_loop_mm.front() = 40;
    meridian = meridian_of(problem);
    EXPECT_EQ(meridian.rest_loop, (std::vector<double>{0, 40, 30, 60, 50}));
    EXPECT_EQ(meridian.rest_height, (std::vector<double>{2.5, 5, 5, 5}));
    EXPECT_EQ(node_of_first_loop(problem), 1U);
    problem.first_fan_height_mm = 7;
    EXPECT_EQ(meridian_of(problem).rest_height.front(), 7);
    EXPECT_TRUE(meridian.first_on_axis);
    EXPECT_FALSE(meridian.last_on_axis);
}

TEST(Meridian, CoarsenedJoinsPairsOfRounds) {
    Meridian fine;
    fine.rest_loop = {0, 30, 60, 50, 70, 80};
    fine.rest_height = {1, 2, 4, 8, 16};
    fine.first_on_axis = true;
    const Meridian coarse = coarsened(fine);
    EXPECT_EQ(coarse.rest_height, (std::vector<double>{3, 12, 16}));
    // (1, 2, 1) / 4 inside, the ends as they are.
    EXPECT_EQ(coarse.rest_loop, (std::vector<double>{0, 50, 67.5, 80}));
    EXPECT_TRUE(coarse.first_on_axis);
    EXPECT_FALSE(coarse.last_on_axis);
    fine.rest_loop.pop_back();
    fine.rest_height.pop_back();
    EXPECT_EQ(coarsened(fine).rest_loop, (std::vector<double>{0, 50, 70}));
    EXPECT_EQ(coarsened(fine).rest_height, (std::vector<double>{3, 12}));
}

TEST(Meridian, RefinedStandsHalfWayBetween) {
    Meridian fine;
    fine.rest_loop = {0, 30, 60, 50, 70, 80};
    fine.rest_height = {1, 2, 4, 8, 16};
    EXPECT_EQ(refined(fine, {0, 0, 10, 6, 14, 8, 20, 9}),
              (Positions{0, 0, 5, 3, 10, 6, 12, 7, 14, 8, 20, 9}));
    fine.rest_loop.pop_back();
    EXPECT_EQ(refined(fine, {0, 0, 10, 6, 14, 8}), (Positions{0, 0, 5, 3, 10, 6, 12, 7, 14, 8}));
}

/// Every loop as wide as it can be while its neighbours' walls still reach, up to 95 in 100 of a round.
TEST(ColdStart, StandsOnTheCountsAlone) {
    Meridian meridian;
    meridian.rest_loop = {0, two_pi * 3, two_pi * 30, two_pi * 4, 0};
    meridian.rest_height = {5, 5, 10, 2};
    meridian.first_on_axis = meridian.last_on_axis = true;
    const Positions x = start_from_counts(meridian);
    const double radius[] = {0, 3, 7.75, 1.9, 0};
    for (std::size_t i = 0; i < 5; ++i) EXPECT_NEAR(x[2 * i], radius[i], 1e-12) << i;
    EXPECT_EQ(x[1], 0);
    EXPECT_NEAR(x[3], 4, 1e-12);  // 3 across and 4 up
    EXPECT_NEAR(x[5] - x[3], std::sqrt(25 - 4.75 * 4.75), 1e-12);
    EXPECT_NEAR(x[7] - x[5], std::sqrt(100 - 5.85 * 5.85), 1e-12);
    EXPECT_NEAR(x[9] - x[7], std::sqrt(4 - 1.9 * 1.9), 1e-12);
}

/// From a shape of half the rounds: each loop at its share of the way, lifted by a thousandth a round.
TEST(ColdStart, TakesAShapeOfOtherRounds) {
    const ShapeProblem problem = piece_of({6, 12, 12, 6}, 0, MeridianEnd::drawn_closed);
    Shape shape;
    shape.radius_mm = {0, 8, 4};
    shape.z_mm = {0, 2, 10};
    shape.last_pole_z_mm = 11;
    const Positions x = start_from_shape(problem, meridian_of(problem), shape);
    const double radius[] = {0, 4, 8, 6, 4, 0}, z[] = {0, 1, 2, 6, 10, 11};
    const double lift[] = {0, 0.005, 0.01, 0.015, 0.02, 0.0225};
    for (std::size_t i = 0; i < 6; ++i) {
        EXPECT_NEAR(x[2 * i], radius[i], 1e-12) << i;
        EXPECT_NEAR(x[2 * i + 1], z[i] + lift[i], 1e-12) << i;
    }
}

/// The poles of drawn ends never start on the wrong side of their loops.
TEST(ColdStart, KeepsPolesOutside) {
    ShapeProblem problem = piece_of({12, 12}, 0, MeridianEnd::drawn_closed);
    problem.first = MeridianEnd::drawn_closed;
    problem.rest_loop_mm.front() = 60;
    Shape shape;
    shape.radius_mm = {9, 10, 9};
    shape.z_mm = {3, 8, 13};
    shape.first_pole_z_mm = 5;
    shape.last_pole_z_mm = 12;
    const Positions x = start_from_shape(problem, meridian_of(problem), shape);
    EXPECT_NEAR(x[1], 3, 1e-12);
    EXPECT_NEAR(x[3], 3 + 0.0025, 1e-12);
    EXPECT_NEAR(x.back(), 13 + 0.0025 + 0.005 + 0.005 + 0.0025, 1e-12);
    shape.first_pole_z_mm = 1;
    shape.last_pole_z_mm = 16;
    const Positions far = start_from_shape(problem, meridian_of(problem), shape);
    EXPECT_NEAR(far[1], 1, 1e-12);
    EXPECT_NEAR(far.back(), 16 + 0.015, 1e-12);
}

}  // namespace
}  // namespace roundwright::test
