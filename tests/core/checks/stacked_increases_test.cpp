#include "core/checks/stacked_increases.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace roundwright {
namespace {

/// Single crochets over `loops` loops, two (or more) in each of these.
GraphRound increasing_at(int loops, const std::vector<int>& at, int in_each = 2) {
    GraphRound round;
    round.loops_below = loops;
    for (int loop = 0; loop < loops; ++loop) {
        round.stitches.push_back({Stitch{}, loop});
        if (std::find(at.begin(), at.end(), loop) == at.end()) continue;
        Stitch more;
        more.same_foot = true;
        for (int k = 1; k < in_each; ++k) round.stitches.push_back({more, loop});
    }
    return round;
}

TEST(StackedIncreases, HaveTheirPlaceInTheMiddleOfTheirLoop) {
    EXPECT_EQ(increase_places(increasing_at(4, {0, 2})), (std::vector<double>{0.125, 0.625}));
    EXPECT_EQ(increase_places(increasing_at(4, {3}, 3)),
              (std::vector<double>{0.875}));  // three in one: one place
    EXPECT_EQ(increase_places(increasing_at(4, {0, 1})), (std::vector<double>{0.125, 0.375}));
    EXPECT_TRUE(increase_places(increasing_at(4, {})).empty());
    GraphRound ring = increasing_at(4, {0, 2});
    ring.loops_below = 0;
    EXPECT_TRUE(increase_places(ring).empty());
}

TEST(StackedIncreases, StandWithinAFifthOfTheWayToTheNext) {
    // Five increases: a fifth of the way from one to the next is 0.04 of the way around.
    const GraphRound below = increasing_at(100, {0, 20, 40, 60, 80});
    EXPECT_TRUE(are_stacked(below, increasing_at(100, {3, 23, 43, 63, 83})));
    EXPECT_TRUE(are_stacked(below, increasing_at(100, {17, 37, 57, 77, 97})));
    EXPECT_FALSE(are_stacked(below, increasing_at(100, {5, 25, 45, 65, 85})));
    EXPECT_FALSE(are_stacked(below, increasing_at(100, {15, 35, 55, 75, 95})));
    EXPECT_FALSE(are_stacked(below, increasing_at(100, {0, 20, 40, 60, 85})));
    EXPECT_FALSE(are_stacked(below, increasing_at(100, {0, 20, 40, 60})));
    EXPECT_FALSE(are_stacked(increasing_at(100, {}), increasing_at(100, {})));
    EXPECT_TRUE(are_stacked(increasing_at(10, {4}), increasing_at(11, {5})));
}

}  // namespace
}  // namespace roundwright
