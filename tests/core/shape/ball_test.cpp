#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <numeric>

#include "core/shape/solve_shape.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

using std::numbers::pi;

class Ball : public testing::TestWithParam<int> {};

// Common practice: n rounds up, n even, n down, medium stuffed, makes a ball; its equator is 6 n w.
TEST_P(Ball, IsRound) {
    const int n = GetParam();
    const Shape ball =
        solve_shape(piece_of(ball_counts(n), medium_stuffing_stretch, MeridianEnd::drawn_closed));
    ASSERT_EQ(ball.termination, Termination::converged);
    EXPECT_NEAR(ball.width_mm / (6 * n * width_mm / pi), 1, 0.06);
    EXPECT_GT(ball.height_mm / ball.width_mm, 0.90);
    EXPECT_LT(ball.height_mm / ball.width_mm, 1.05);
    EXPECT_NEAR(ball.area_stretch, medium_stuffing_stretch, 1e-8);
}

INSTANTIATE_TEST_SUITE_P(Rounds, Ball, testing::Range(4, 21));

// Total stitches of the ball's rounds (computed): what the tables here must add up to.
TEST(BallTable, AddsUp) {
    const std::pair<int, int> totals[] = {{4, 192}, {5, 300}, {6, 432}, {8, 768}, {10, 1200}};
    for (const auto& [n, total] : totals) {
        const std::vector<int> counts = ball_counts(n);
        EXPECT_EQ(std::accumulate(counts.begin(), counts.end(), 0), total) << "n = " << n;
        EXPECT_EQ(counts.size(), 3u * static_cast<unsigned>(n) - 1);
    }
}

TEST(Stuffing, FirmerIsBigger) {
    Shape softer;
    for (const double stretch : {light_stuffing_stretch, medium_stuffing_stretch, firm_stuffing_stretch}) {
        const Shape ball = solve_shape(piece_of(ball_counts(8), stretch, MeridianEnd::drawn_closed));
        ASSERT_EQ(ball.termination, Termination::converged);
        EXPECT_GT(ball.height_mm, softer.height_mm);
        EXPECT_GT(ball.width_mm, softer.width_mm);
        EXPECT_GT(ball.volume_mm3, softer.volume_mm3);
        EXPECT_GT(ball.pressure, softer.pressure);
        softer = ball;
    }
}

}  // namespace
}  // namespace roundwright::test
