#include "core/shape/piece_measures.h"

#include <gtest/gtest.h>
#include <numbers>
#include <numeric>

#include "core/shape/measure_shape.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

PieceMeasures measured(const ShapeProblem& problem) { return measures_of(problem, solve_shape(problem)); }

TEST(PieceMeasures, ABallIsMeasuredLoopByLoop) {
    const ShapeProblem ball = piece_of(ball_counts(5), 0.04, MeridianEnd::drawn_closed);
    const Shape shape = solve_shape(ball);
    const PieceMeasures measures = measures_of(ball, shape);
    ASSERT_TRUE(measures.usable());
    EXPECT_TRUE(measures.converged());
    EXPECT_EQ(measures.fidelity, Fidelity::round);
    EXPECT_FALSE(measures.flattened);
    EXPECT_EQ(measures.rounds(), ball.rest_height_mm.size());
    EXPECT_EQ(measures.width_mm, shape.width_mm);
    EXPECT_EQ(measures.depth_mm, shape.depth_mm);
    EXPECT_EQ(measures.height_mm, shape.height_mm);
    EXPECT_EQ(measures.volume_mm3, shape.volume_mm3);
    EXPECT_EQ(measures.surface_mm2, shape.surface_mm2);
    EXPECT_EQ(measures.area_stretch, shape.area_stretch);
    EXPECT_EQ(measures.loops.front().wale_stretch, 0);
    for (std::size_t i = 0; i < measures.rounds(); ++i) {
        const LoopMeasures& loop = measures.round(i);
        EXPECT_EQ(loop.width_mm, 2 * shape.radius_mm[i + 1]);
        EXPECT_EQ(loop.depth_mm, loop.width_mm);
        EXPECT_EQ(loop.height_mm, shape.z_mm[i + 1]);
        EXPECT_EQ(loop.course_stretch, shape.course_stretch[i + 1]);
        EXPECT_EQ(loop.wale_stretch, shape.wale_stretch[i]);
        EXPECT_NEAR(loop.length_mm(), ball.rest_loop_mm[i + 1] * (1 + loop.course_stretch), 1e-9);
    }
}

TEST(PieceMeasures, ALimpPieceIsAsWideAsItLiesAndTwoLayersDeep) {
    ShapeProblem ear = piece_of({6, 12, 18, 18, 18, 18, 18, 18}, 0, MeridianEnd::open);
    ear.limp = true;
    const PieceMeasures measures = measured(ear);
    ASSERT_TRUE(measures.flattened);
    const LoopMeasures& loop = measures.round(6);
    EXPECT_NEAR(loop.length_mm(), 2 * std::numbers::pi * loop.radius_mm, 1e-12);
    EXPECT_GT(loop.width_mm, 1.3 * 2 * loop.radius_mm) << "flattened it is pi / 2 as wide as round";
    EXPECT_NEAR(loop.depth_mm, measures.depth_mm, 0.5 * measures.depth_mm);
    EXPECT_LT(loop.depth_mm, 0.2 * loop.width_mm);
}

TEST(PieceMeasures, SayWhatTheyAreThoseOf) {
    ShapeProblem rows = piece_of(disc_counts(6, 4), 0, MeridianEnd::open);
    rows.equivalent_round = true;
    EXPECT_EQ(measured(rows).fidelity, Fidelity::equivalent_round);
    EXPECT_TRUE(is_of_revolution(Fidelity::round));
    EXPECT_TRUE(is_of_revolution(Fidelity::equivalent_round));
    EXPECT_FALSE(is_of_revolution(Fidelity::every_stitch));
}

TEST(PieceMeasures, OfNoShapeAreNone) {
    const PieceMeasures none = measured({});
    EXPECT_FALSE(none.usable());
    EXPECT_FALSE(none.converged());
    EXPECT_EQ(none.termination, Termination::unusable_problem);
    EXPECT_EQ(none.rounds(), 0U);
    EXPECT_EQ(widest_loop(none), 0U);
}

TEST(PieceMeasures, TheFirstOfTheWidestLoopsIsNamed) {
    PieceMeasures measures;
    for (const double width : {0.0, 10.0, 20.0, 20.0, 5.0}) measures.loops.push_back({width});
    EXPECT_EQ(widest_loop(measures), 2U);
}

}  // namespace
}  // namespace roundwright::test
