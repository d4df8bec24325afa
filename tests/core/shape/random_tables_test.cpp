#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <gtest/gtest.h>
#include <limits>
#include <random>
#include <string>

#include "core/shape/lie.h"
#include "core/shape/solve_shape.h"
#include "tests/core/shape/random_table.h"
#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

constexpr int all_tables = 100'000;

bool all_finite(const std::vector<double>& values) {
    return std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
}

bool is_finite(const Shape& shape) {
    return all_finite(shape.radius_mm) && all_finite(shape.z_mm) && all_finite(shape.course_stretch) &&
           all_finite(shape.wale_stretch) &&
           all_finite({shape.residual, shape.energy, shape.pressure, shape.area_stretch, shape.width_mm,
                       shape.height_mm, shape.volume_mm3, shape.surface_mm2});
}

std::string described(const ShapeProblem& problem) {
    std::string text = "stretch " + std::to_string(problem.area_stretch) + ", stitches";
    for (const double loop : problem.rest_loop_mm)
        text += " " + std::to_string(static_cast<int>(std::lround(loop / problem.stitch_width_mm)));
    return text;
}

// Every piece that can be worked has a shape, or an honest word that it was not found.
TEST(RandomTables, ConvergeAndEncloseSomething) {
    const int tables = roundwright::testing::random_cases(all_tables);
    int converged = 0;
    int as_wanted = 0;
    for (int number = 1; number <= tables; ++number) {
        std::mt19937 random(static_cast<unsigned>(number));
        const ShapeProblem problem = random_table(random);
        const Shape shape = solve_shape(problem);
        ASSERT_NE(shape.termination, Termination::unusable_problem) << number << ": " << described(problem);
        ASSERT_TRUE(is_finite(shape)) << number << ": " << described(problem);
        ASSERT_GE(*std::min_element(shape.radius_mm.begin(), shape.radius_mm.end()), 0);
        ASSERT_EQ(lie_of_rounds(problem, shape).size(), problem.rest_height_mm.size());
        ASSERT_GE(shape.volume_mm3, 0) << number << ": " << described(problem);
        if (problem.area_stretch > 0) {
            ASSERT_GT(shape.volume_mm3, 0) << number << ": " << described(problem);
        }
        if (shape.termination != Termination::converged) continue;
        ++converged;
        ASSERT_LE(shape.residual, 1e-9);
        // More than wanted only where the fabric's misfit alone gives more.
        ASSERT_GE(shape.area_stretch, problem.area_stretch * (1 - 1e-7))
            << number << ": " << described(problem);
        as_wanted += problem.area_stretch == 0 || shape.area_stretch <= problem.area_stretch * (1 + 1e-7);
    }
    RecordProperty("converged", converged);
    EXPECT_GE(converged, tables - tables / 1000 - 1);
    EXPECT_GE(as_wanted, tables - tables / 50 - 1);
}

// An edit's warm start finds the shape a cold start finds.
TEST(RandomTables, WarmStartsAgreeWithColdOnes) {
    const int tables = roundwright::testing::random_cases(all_tables) / 20;
    int same = 0;
    int compared = 0;
    for (int number = 1; number <= tables; ++number) {
        std::mt19937 random(static_cast<unsigned>(number));
        ShapeProblem problem = random_table(random);
        const Shape before = solve_shape(problem);
        const auto round = 1 + static_cast<std::ptrdiff_t>(random() % problem.rest_height_mm.size());
        problem.rest_loop_mm.insert(problem.rest_loop_mm.begin() + round,
                                    problem.rest_loop_mm[static_cast<std::size_t>(round)]);
        problem.rest_height_mm.insert(problem.rest_height_mm.begin() + round - 1,
                                      problem.rest_height_mm[static_cast<std::size_t>(round) - 1]);
        const Shape cold = solve_shape(problem);
        const Shape warm = solve_shape(problem, {}, &before);
        if (cold.termination != Termination::converged || warm.termination != Termination::converged)
            continue;
        ++compared;
        same += std::abs(warm.width_mm - cold.width_mm) < 1e-4 * cold.width_mm &&
                std::abs(warm.height_mm - cold.height_mm) < 1e-4 * cold.width_mm;
    }
    EXPECT_GE(compared, tables - tables / 500 - 1);
    EXPECT_GE(same, compared - compared / 500 - 1);
}

// Lengths no piece has, and no numbers at all: never a shape that is not finite.
TEST(RandomTables, NonsenseNeverGivesNonsense) {
    const double odd[] = {0,    -1,   1e-300, 1e-9,         1e-6,
                          1e-3, 1,    5,      1e3,          1e6,
                          1e9,  1e12, 1e300,  std::nan(""), std::numeric_limits<double>::infinity()};
    const auto pick = [&](std::mt19937& random, int from, int count) {
        return odd[from + static_cast<int>(random() % static_cast<unsigned>(count))];
    };
    for (unsigned number = 1; number <= 3000; ++number) {
        std::mt19937 random(number);
        const bool wild = number % 2 == 0;  // else within what the solver takes, but far apart
        ShapeProblem problem;
        const std::size_t rounds = 1 + random() % 8;
        for (std::size_t i = 0; i <= rounds; ++i)
            problem.rest_loop_mm.push_back(wild ? pick(random, 0, 15) : pick(random, 4, 7));
        for (std::size_t i = 0; i < rounds; ++i)
            problem.rest_height_mm.push_back(wild ? pick(random, 0, 15) : pick(random, 4, 7));
        problem.first = static_cast<MeridianEnd>(random() % 3);
        problem.last = static_cast<MeridianEnd>(random() % 3);
        problem.fan_height_mm = wild ? pick(random, 0, 15) : 2.5;
        problem.area_stretch = wild ? pick(random, 0, 15) : 0.04;
        problem.stitch_width_mm = 5;
        const Shape shape = solve_shape(problem);
        EXPECT_TRUE(is_finite(shape)) << number;
        EXPECT_EQ(shape.usable(), shape.termination != Termination::unusable_problem) << number;
        for (const RoundLie& lie : lie_of_rounds(problem, shape))
            EXPECT_TRUE(all_finite({lie.growth, lie.rise_mm, lie.spare_length_mm, lie.wave_height_mm}))
                << number;
    }
}

}  // namespace
}  // namespace roundwright::test
