#include "core/shape/width_profile.h"

#include <gtest/gtest.h>

namespace roundwright {
namespace {

PieceMeasures of_widths(std::initializer_list<double> widths) {
    PieceMeasures measures;
    for (const double width : widths) {
        LoopMeasures loop;
        loop.width_mm = width;
        measures.loops.push_back(loop);
    }
    return measures;
}

TEST(WidthProfile, OfABallIsItsWidestRoundAndWhereItNarrows) {
    const auto ball = width_profile(of_widths({0, 20, 35, 45, 50, 50, 49.5, 45, 35, 20}));
    ASSERT_TRUE(ball);
    EXPECT_EQ(ball->widest, 4U);
    EXPECT_EQ(ball->narrows_from, 7U);
    EXPECT_TRUE(ball->necks.empty());
}

TEST(WidthProfile, FindsTheNeckBetweenHeadAndBody) {
    const auto both = width_profile(of_widths({0, 30, 50, 40, 25, 24, 30, 60, 70, 60, 30}));
    ASSERT_TRUE(both);
    EXPECT_EQ(both->widest, 8U);
    EXPECT_EQ(both->necks, (std::vector<std::size_t>{5}));
    const auto three = width_profile(of_widths({0, 50, 30, 50, 30, 50, 10}));
    EXPECT_EQ(three->necks, (std::vector<std::size_t>{2, 4}));
}

TEST(WidthProfile, TakesNoRippleForANeck) {
    const auto tube = width_profile(of_widths({20, 40, 39.5, 40, 39.2, 40, 39.9}));
    EXPECT_FALSE(tube->narrows_from);
    EXPECT_TRUE(tube->necks.empty());
}

TEST(WidthProfile, OfNoShapeIsNone) {
    EXPECT_FALSE(width_profile({}));
    EXPECT_FALSE(width_profile(of_widths({5})));
}

}  // namespace
}  // namespace roundwright
