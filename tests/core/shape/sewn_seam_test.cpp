#include <algorithm>
#include <gtest/gtest.h>
#include <numbers>
#include <random>

#include "core/shape/solve_shape.h"
#include "tests/core/shape/random_table.h"
#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

using std::numbers::pi;

ShapeProblem leg(bool sewn) {
    ShapeProblem problem;
    problem.rest_loop_mm = {0, 30, 60, 90, 120};
    problem.rest_loop_mm.insert(problem.rest_loop_mm.end(), 16, 120);
    problem.rest_height_mm.assign(problem.rest_loop_mm.size() - 1, 5);
    problem.stitch_width_mm = 5;
    problem.area_stretch = 0.04;
    problem.sewn_straight = sewn;
    return problem;
}

// Like a pillow: straight and half its loop long at the seam, round further down.
TEST(SewnSeam, GoesFromRoundToStraight) {
    const Shape open = solve_shape(leg(false));
    const Shape sewn = solve_shape(leg(true));
    ASSERT_EQ(sewn.termination, Termination::converged);
    ASSERT_EQ(sewn.sections.size(), sewn.radius_mm.size());
    const LoopSection& seam = sewn.sections.back();
    EXPECT_NEAR(2 * seam.half_width_mm, pi * open.radius_mm.back(), 1e-9);
    EXPECT_LT(seam.half_depth_mm, 2);
    const LoopSection& body = sewn.sections[8];
    EXPECT_NEAR(body.half_width_mm, body.half_depth_mm, 1e-9);
    EXPECT_NEAR(sewn.width_mm, 2 * seam.half_width_mm, 1e-9);
    EXPECT_NEAR(sewn.depth_mm, open.width_mm, 1e-9);
    EXPECT_LT(sewn.volume_mm3, open.volume_mm3);
    EXPECT_LT(sewn.height_mm, open.height_mm);
    EXPECT_GT(sewn.height_mm, 0.75 * open.height_mm);
}

// Flattening takes nothing from a loop: what is not held apart by the fabric is as long as the round loop.
TEST(SewnSeam, KeepsTheLengthOfEveryLoop) {
    const Shape sewn = solve_shape(leg(true));
    for (std::size_t i = 1; i + 1 < sewn.sections.size(); ++i)
        EXPECT_NEAR(sewn.sections[i].length_mm(), 2 * pi * sewn.radius_mm[i], 1e-6) << i;
}

TEST(SewnSeam, OfRandomTablesIsSound) {
    for (int number = 1; number <= testing::random_cases(10'000); ++number) {
        std::mt19937 random(static_cast<unsigned>(number));
        ShapeProblem problem = random_table(random);
        problem.last = MeridianEnd::open;
        problem.area_stretch = std::max(problem.area_stretch, 0.01);
        const Shape open = solve_shape(problem);
        problem.sewn_straight = true;
        const Shape sewn = solve_shape(problem);
        ASSERT_EQ(sewn.termination, open.termination) << number;
        ASSERT_EQ(sewn.sections.size(), problem.rest_loop_mm.size()) << number;
        // Rounds that were level fold up towards the seam, by no more than they are long.
        double length = 0;
        for (std::size_t i = 0; i < sewn.wale_stretch.size(); ++i)
            length += problem.rest_height_mm[i] * (1 + sewn.wale_stretch[i]);
        ASSERT_LE(sewn.height_mm, length + problem.first_fan_height_mm + problem.fan_height_mm) << number;
        ASSERT_GE(*std::ranges::min_element(sewn.z_mm), -1e-9) << number;
        for (const LoopSection& section : sewn.sections)
            ASSERT_LE(section.half_depth_mm, section.half_width_mm + 1e-9) << number;
    }
}

}  // namespace
}  // namespace roundwright::test
