#include "core/shape/solve_shape.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <limits>

#include "core/shape/measure_profile.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

const std::vector<int> gourd{6, 12, 18, 24, 30, 30, 24, 18, 12, 18, 24, 30, 36, 36, 36, 30, 24, 18, 12, 6};

TEST(SolveShape, StandsOnTheGround) {
    const Shape shape = solve_shape(piece_of(gourd, 0.04, MeridianEnd::drawn_closed));
    ASSERT_EQ(shape.termination, Termination::converged);
    EXPECT_LE(shape.residual, 1e-9);
    EXPECT_EQ(shape.z_mm.front(), 0);
    EXPECT_EQ(shape.first_pole_z_mm, 0);
    EXPECT_NEAR(std::max(shape.last_pole_z_mm, shape.z_mm.back()), shape.height_mm, 1e-12);
    EXPECT_EQ(shape.radius_mm.size(), gourd.size() + 1);
    EXPECT_EQ(shape.wale_stretch.size(), gourd.size());
    EXPECT_EQ(shape.radius_mm.front(), 0);
}

// What the solve reports is what its own profile measures, with the fan to the pole added.
TEST(SolveShape, MeasuresItsProfile) {
    const Shape shape = solve_shape(piece_of(gourd, 0.04, MeridianEnd::drawn_closed));
    std::vector<double> r = shape.radius_mm;
    std::vector<double> z = shape.z_mm;
    r.push_back(0);
    z.push_back(shape.last_pole_z_mm);
    const ProfileMeasure measure = measure_profile(r, z);
    EXPECT_NEAR(shape.volume_mm3, measure.volume, 1e-9 * measure.volume);
    EXPECT_NEAR(shape.surface_mm2, measure.surface, 1e-9 * measure.surface);
    EXPECT_NEAR(shape.width_mm, measure.width, 1e-12);
    EXPECT_NEAR(shape.height_mm, measure.height, 1e-12);
}

TEST(SolveShape, ReachesTheStretchItIsStuffedTo) {
    for (const double stretch : {0.01, 0.04, 0.08, 0.3}) {
        const Shape shape = solve_shape(piece_of(gourd, stretch, MeridianEnd::drawn_closed));
        ASSERT_EQ(shape.termination, Termination::converged);
        EXPECT_NEAR(shape.area_stretch / stretch, 1, 1e-7);
    }
}

// The neck and the fan of this piece stretch its fabric by 0.4 % with no stuffing at all.
TEST(SolveShape, StuffingLessThanTheMisfitLeavesTheMisfit) {
    const Shape limp = solve_shape(piece_of(gourd, 0, MeridianEnd::drawn_closed));
    const Shape stuffed = solve_shape(piece_of(gourd, 0.001, MeridianEnd::drawn_closed));
    ASSERT_EQ(stuffed.termination, Termination::converged);
    EXPECT_NEAR(stuffed.area_stretch, limp.area_stretch, 1e-4);
    EXPECT_GT(stuffed.pressure, 0);
    EXPECT_GT(stuffed.volume_mm3, 0);
}

// Twice the stitch makes a piece twice the size with the same stretch everywhere.
TEST(SolveShape, ScalesWithTheStitch) {
    const Shape once = solve_shape(piece_of(gourd, 0.04, MeridianEnd::drawn_closed, 5, 4.5));
    const Shape twice = solve_shape(piece_of(gourd, 0.04, MeridianEnd::drawn_closed, 10, 9));
    EXPECT_NEAR(twice.width_mm, 2 * once.width_mm, 1e-6 * once.width_mm);
    EXPECT_NEAR(twice.volume_mm3, 8 * once.volume_mm3, 1e-5 * once.volume_mm3);
    for (std::size_t i = 0; i < gourd.size(); ++i)
        EXPECT_NEAR(once.course_stretch[i], twice.course_stretch[i], 1e-7);
}

TEST(SolveShape, WarmStartFindsTheColdShape) {
    const Shape before = solve_shape(piece_of(gourd, 0.04, MeridianEnd::drawn_closed));
    std::vector<int> edited = gourd;
    edited.insert(edited.begin() + 5, 36);
    const ShapeProblem problem = piece_of(edited, 0.06, MeridianEnd::drawn_closed);
    const Shape cold = solve_shape(problem);
    const Shape warm = solve_shape(problem, {}, &before);
    ASSERT_EQ(warm.termination, Termination::converged);
    for (std::size_t i = 0; i < cold.radius_mm.size(); ++i) {
        EXPECT_NEAR(warm.radius_mm[i], cold.radius_mm[i], 1e-5);
        EXPECT_NEAR(warm.z_mm[i], cold.z_mm[i], 1e-5);
    }
}

// Flat, an unstuffed cone is in balance though it would rather rise: it must not stay there.
TEST(SolveShape, FlatWarmStartRisesAgain) {
    const Shape flat = solve_shape(piece_of(disc_counts(7, 8), 0, MeridianEnd::open));
    ASSERT_EQ(flat.termination, Termination::converged);
    EXPECT_LT(flat.height_mm, 1e-3);
    const Shape cone = solve_shape(piece_of(disc_counts(5, 8), 0, MeridianEnd::open), {}, &flat);
    EXPECT_GT(cone.height_mm, 20);
}

TEST(SolveShape, AnyShapeServesAsAWarmStart) {
    const ShapeProblem problem = piece_of(gourd, 0.04, MeridianEnd::drawn_closed);
    const double nan = std::nan("");
    Shape unusable;
    Shape short_one;
    short_one.radius_mm = {0, 1};
    short_one.z_mm = {0, nan};
    Shape lopsided;
    lopsided.radius_mm = {1, 2, 3};
    lopsided.z_mm = {1};
    Shape upside_down = solve_shape(problem);
    for (double& z : upside_down.z_mm) z = -z;
    for (const Shape* warm : {&unusable, &short_one, &lopsided, &upside_down})
        EXPECT_EQ(solve_shape(problem, {}, warm).termination, Termination::converged);
}

TEST(SolveShape, StopsWhenAsked) {
    std::stop_source source;
    source.request_stop();
    ShapeOptions options;
    options.stop = source.get_token();
    EXPECT_EQ(solve_shape(piece_of(gourd, 0.04, MeridianEnd::drawn_closed), options).termination,
              Termination::cancelled);
}

TEST(SolveShape, SaysWhenItWasNotGivenEnoughSteps) {
    ShapeOptions options;
    options.max_iterations = 1;
    const Shape shape = solve_shape(piece_of(gourd, 0.04, MeridianEnd::drawn_closed), options);
    EXPECT_EQ(shape.termination, Termination::iteration_limit);
    EXPECT_TRUE(shape.usable());
    EXPECT_TRUE(std::isfinite(shape.width_mm));
}

TEST(SolveShape, RefusesWhatIsNoPiece) {
    const double nan = std::nan("");
    const double infinity = std::numeric_limits<double>::infinity();
    const ShapeProblem good = piece_of({6, 12, 12}, 0.04, MeridianEnd::drawn_closed);
    const auto refused = [](ShapeProblem problem) {
        const Shape shape = solve_shape(problem);
        return shape.termination == Termination::unusable_problem && !shape.usable();
    };
    EXPECT_TRUE(refused({}));
    for (const double bad : {nan, infinity, 0.0, -5.0}) {
        ShapeProblem problem = good;
        problem.rest_loop_mm[2] = bad;
        EXPECT_TRUE(refused(problem)) << bad;
        problem = good;
        problem.rest_height_mm[1] = bad;
        EXPECT_TRUE(refused(problem)) << bad;
        problem = good;
        problem.fan_height_mm = bad;
        EXPECT_TRUE(refused(problem)) << bad;
    }
    for (const double bad : {nan, infinity, -0.01}) {
        ShapeProblem problem = good;
        problem.area_stretch = bad;
        EXPECT_TRUE(refused(problem)) << bad;
    }
    ShapeProblem too_few = good;
    too_few.rest_height_mm.pop_back();
    EXPECT_TRUE(refused(too_few));
    ShapeOptions options;
    options.wale_stiffness = nan;
    EXPECT_EQ(solve_shape(good, options).termination, Termination::unusable_problem);
}

// Coarse first, then fine: the last level has little left to do, however long the piece.
TEST(SolveShape, LongPiecesTakeFewSteps) {
    for (const int n : {20, 100, 600}) {
        const Shape ball = solve_shape(piece_of(ball_counts(n), 0.04, MeridianEnd::drawn_closed));
        EXPECT_EQ(ball.termination, Termination::converged);
        EXPECT_LE(ball.iterations, 6) << n;
    }
}

// A large piece on a narrow start, stuffed very firmly: past the peak of a balloon's pressure, where more
// stretch takes less pressure. Found among random tables.
TEST(SolveShape, BeyondTheBalloonsPeak) {
    ShapeProblem problem;
    for (const int stitches : {53,   53,   59,   113,  224,  435,  848,  704,  617,  368,  648,  1145, 2000,
                               2000, 1998, 1999, 1998, 2000, 2000, 1999, 1995, 2000, 2000, 1787, 1114})
        problem.rest_loop_mm.push_back(stitches * width_mm);
    problem.rest_height_mm.assign(problem.rest_loop_mm.size() - 1, 1.12 * width_mm);
    problem.first = MeridianEnd::open;
    problem.area_stretch = 0.2;
    problem.stitch_width_mm = width_mm;
    const Shape shape = solve_shape(problem);
    EXPECT_EQ(shape.termination, Termination::converged);
    EXPECT_NEAR(shape.area_stretch, 0.2, 1e-7);
    problem.area_stretch = 0.21;
    const Shape firmer = solve_shape(problem);
    EXPECT_GT(firmer.area_stretch, shape.area_stretch);
    EXPECT_LT(firmer.pressure, shape.pressure);
}

// Single rounds, drums, discs stuffed through an open rim, frills and necks: all have a shape.
TEST(SolveShape, AwkwardPiecesConverge) {
    const std::vector<std::vector<int>> tables{
        {6},
        {60},
        {3},
        {6, 12, 18, 24, 30, 30, 30},
        disc_counts(12, 12),
        disc_counts(4, 3),
        {6, 12, 24, 48, 96, 192, 384},
        {60, 30, 15, 8, 4, 8, 15, 30, 60},
        {40, 40, 20, 40, 40, 20, 40, 40},
        std::vector<int>(300, 6),
        std::vector<int>(100, 200),
    };
    for (const std::vector<int>& counts : tables)
        for (const MeridianEnd end : {MeridianEnd::open, MeridianEnd::drawn_closed})
            for (const double stretch : {0.0, 0.01, 0.04, 0.08}) {
                const Shape shape = solve_shape(piece_of(counts, stretch, end));
                EXPECT_EQ(shape.termination, Termination::converged)
                    << counts.size() << " rounds from " << counts.front() << ", stretch " << stretch;
                if (stretch > 0) {
                    EXPECT_GT(shape.volume_mm3, 0);
                }
            }
}

}  // namespace
}  // namespace roundwright::test
