#include "core/shape/fabric_signs.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/shape/fabric_limits.h"
#include "core/shape/solve_shape.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

std::vector<FabricSign> signs_of(const std::vector<int>& counts, double area_stretch,
                                 MeridianEnd end = MeridianEnd::drawn_closed) {
    const ShapeProblem problem = piece_of(counts, area_stretch, end);
    const Shape shape = solve_shape(problem);
    EXPECT_EQ(shape.termination, Termination::converged);
    return fabric_signs(problem, shape);
}

std::vector<int> rounds_with(FabricSignKind kind, const std::vector<FabricSign>& signs) {
    std::vector<int> rounds;
    for (const FabricSign& sign : signs)
        if (sign.kind == kind) rounds.push_back(sign.round);
    return rounds;
}

TEST(FabricSigns, AStuffedBallHasNone) {
    for (const int n : {4, 6, 10})
        for (const double stretch : {light_stuffing_stretch, medium_stuffing_stretch, firm_stuffing_stretch})
            EXPECT_TRUE(signs_of(ball_counts(n), stretch).empty()) << n << " rounds, stretch " << stretch;
}

// A tube of 24 is evenly stretched: gaps on one side of the limit and none on the other.
TEST(FabricSigns, GapsAboveTheLimit) {
    ShapeProblem problem = piece_of(std::vector<int>(20, 24), 0.1, MeridianEnd::open);
    Shape shape = solve_shape(problem);
    std::fill(shape.course_stretch.begin(), shape.course_stretch.end(), 0.0);
    std::fill(shape.wale_stretch.begin(), shape.wale_stretch.end(), gaps_above_stretch - 0.001);
    EXPECT_TRUE(rounds_with(FabricSignKind::gaps, fabric_signs(problem, shape)).empty());
    shape.wale_stretch[4] = gaps_above_stretch + 0.001;
    shape.course_stretch[9] = gaps_above_stretch + 0.002;
    const std::vector<FabricSign> signs = fabric_signs(problem, shape);
    EXPECT_EQ(rounds_with(FabricSignKind::gaps, signs), (std::vector<int>{4, 8}));
    const auto first = std::find_if(signs.begin(), signs.end(),
                                    [](const FabricSign& sign) { return sign.kind == FabricSignKind::gaps; });
    EXPECT_NEAR(first->stretch, gaps_above_stretch + 0.001, 1e-12);
}

// Six increases straight to six decreases: a rim, seen in the counts (change of growth 1.91). With one even
// round between (0.95 twice) there is none.
TEST(FabricSigns, RidgeWhereGrowthTurnsRound) {
    const std::vector<int> lens{6, 12, 18, 24, 30, 36, 42, 36, 30, 24, 18, 12, 6};
    const std::vector<FabricSign> signs = signs_of(lens, 0.04);
    ASSERT_EQ(signs.size(), 1u);
    EXPECT_EQ(signs[0].kind, FabricSignKind::ridge);
    EXPECT_EQ(signs[0].round, 6);
    EXPECT_NEAR(signs[0].growth_change, -12 / (2 * std::numbers::pi), 1e-9);
    EXPECT_TRUE(signs_of({6, 12, 18, 24, 30, 36, 42, 42, 36, 30, 24, 18, 12, 6}, 0.04).empty());
}

// Stitches doubled in one round after even ones: a shelf, with a crease below it and a ridge on it.
TEST(FabricSigns, ShelfHasCreaseAndRidge) {
    const std::vector<FabricSign> signs =
        signs_of({6, 12, 18, 18, 18, 18, 36, 36, 36, 36}, 0.04, MeridianEnd::open);
    EXPECT_EQ(rounds_with(FabricSignKind::crease, signs), std::vector<int>{5});
    EXPECT_EQ(rounds_with(FabricSignKind::ridge, signs), std::vector<int>{6});
}

// The foot of a small nose folds inwards though no count jumps: seen in the solved shape only.
TEST(FabricSigns, FootOfANoseIsACrease) {
    const std::vector<FabricSign> signs =
        signs_of({6, 6, 6, 12, 18, 24, 30, 36, 36, 36, 30, 24, 18, 12, 6}, 0.04);
    const auto creases = rounds_with(FabricSignKind::crease, signs);
    ASSERT_EQ(creases, std::vector<int>{2});
    EXPECT_LT(signs.front().turn_degrees, -edge_above_turn_degrees);
    EXPECT_LT(std::abs(signs.front().growth_change), edge_above_growth_change);
}

// A neck of 12 between two balls: medium stuffing widens it, light stuffing hardly.
TEST(FabricSigns, NeckThatStuffingWidens) {
    const std::vector<int> two_balls{6,  12, 18, 24, 30, 36, 36, 36, 30, 24, 18,
                                     12, 12, 18, 24, 30, 30, 30, 24, 18, 12, 6};
    const std::vector<FabricSign> medium = signs_of(two_balls, medium_stuffing_stretch);
    const auto necks = rounds_with(FabricSignKind::widening_neck, medium);
    EXPECT_EQ(necks, (std::vector<int>{11, 12}));
    for (const FabricSign& sign : medium) EXPECT_GT(sign.width_mm, sign.relaxed_width_mm);
    const std::vector<FabricSign> light = signs_of(two_balls, light_stuffing_stretch);
    EXPECT_TRUE(rounds_with(FabricSignKind::widening_neck, light).empty());
}

TEST(FabricSigns, NoneForNoShape) { EXPECT_TRUE(fabric_signs({}, {}).empty()); }

}  // namespace
}  // namespace roundwright::test
