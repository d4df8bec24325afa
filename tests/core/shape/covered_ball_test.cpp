#include "core/shape/covered_ball.h"

#include <gtest/gtest.h>
#include <numbers>

#include "core/shape/measure_shape.h"
#include "core/shape/solve_shape.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

using std::numbers::pi;

PieceMeasures solved(const ShapeProblem& problem) { return measures_of(problem, solve_shape(problem)); }

// Sizes lie in the middle of the fabric: half a thickness is inside it on either side.
TEST(CoveredBall, InsideIsTheWidthLessTheFabric) {
    const ShapeProblem ball = piece_of(ball_counts(6), 0.04, MeridianEnd::drawn_closed);
    const PieceMeasures measures = solved(ball);
    EXPECT_NEAR(*inside_width_mm(ball, measures, 2.5), measures.width_mm - 2.5, 1e-9);
    EXPECT_FALSE(inside_width_mm(ball, measures, 500));
    EXPECT_FALSE(inside_width_mm(ball, {}, 2.5));
}

TEST(CoveredBall, AFlattenedTubeIsMeasuredAsIfItStoodOpen) {
    ShapeProblem tube = piece_of(std::vector<int>(12, 24), 0, MeridianEnd::open);
    tube.first = MeridianEnd::open;
    tube.rest_loop_mm.front() = 24 * width_mm;
    tube.limp = true;
    EXPECT_NEAR(*inside_width_mm(tube, solved(tube), 2), 24 * width_mm / pi - 2, 0.01);
    EXPECT_FALSE(largest_covered_ball_mm(tube, 2));  // a ball falls through
}

TEST(CoveredBall, NoRoomIsInsideAFlatDisc) {
    const ShapeProblem disc = piece_of(disc_counts(6, 8), 0, MeridianEnd::open, width_mm, width_mm);
    ShapeProblem flat = disc;
    for (double& height : flat.rest_height_mm) height = width_mm * 6 / (2 * pi);
    EXPECT_FALSE(inside_width_mm(flat, solved(flat), 2));
}

// n up, n even, n down at w = h: the meridian and the middle loop are those of one ball, 6 n w / pi across.
TEST(CoveredBall, StretchesUntilGapsShow) {
    const ShapeProblem ball = piece_of(ball_counts(8), 0, MeridianEnd::drawn_closed);
    const double middle = 48 * width_mm / pi;
    EXPECT_NEAR(*largest_covered_ball_mm(ball, 2.5), 1.15 * middle - 2.5, 0.05 * middle);
    EXPECT_LE(*largest_covered_ball_mm(ball, 2.5), 1.15 * middle - 2.5 + 1e-9);
    EXPECT_FALSE(largest_covered_ball_mm(ball, 500));
}

// A closed piece whose rounds are too few is short, however wide.
TEST(CoveredBall, ReachesFromEndToEnd) {
    const ShapeProblem lentil =
        piece_of({6, 12, 18, 24, 30, 36, 30, 24, 18, 12, 6}, 0, MeridianEnd::drawn_closed);
    const double meridian = 11 * width_mm + width_mm / 2;
    EXPECT_NEAR(*largest_covered_ball_mm(lentil, 2), 1.15 * 2 * meridian / pi - 2, 1e-9);
    ShapeProblem cup = lentil;
    cup.last = MeridianEnd::open;
    EXPECT_NEAR(*largest_covered_ball_mm(cup, 2), 1.15 * 36 * width_mm / pi - 2, 1e-9);
    cup.equivalent_round = true;
    EXPECT_FALSE(largest_covered_ball_mm(cup, 2));
}

}  // namespace
}  // namespace roundwright::test
