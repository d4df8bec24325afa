#include "core/rounds/workable_counts.h"

#include <gtest/gtest.h>

#include "core/language/round/even_spacing.h"

namespace roundwright {
namespace {

// Common practice: an increase works two stitches in a loop, a decrease one over two.
TEST(WorkableCounts, GoFromHalfTheLoopsToTwiceAsMany) {
    EXPECT_EQ(workable_counts(1), (CountRange{1, 2}));
    EXPECT_EQ(workable_counts(6), (CountRange{3, 12}));
    EXPECT_EQ(workable_counts(7), (CountRange{4, 14}));
    EXPECT_EQ(workable_counts(200'000), (CountRange{100'000, 400'000}));
}

TEST(WorkableCounts, HoldWhatAnIncreaseOrADecreaseAtEveryPlaceComesTo) {
    EXPECT_FALSE(can_be_worked(12, 5));
    EXPECT_TRUE(can_be_worked(12, 6));
    EXPECT_TRUE(can_be_worked(12, 24));
    EXPECT_FALSE(can_be_worked(12, 25));
    EXPECT_FALSE(can_be_worked(13, 6));
    EXPECT_TRUE(can_be_worked(13, 7));
}

TEST(WorkableCounts, AreAnyIntoARing) {
    EXPECT_TRUE(can_be_worked(0, 1));
    EXPECT_TRUE(can_be_worked(0, 40));
}

TEST(WorkableCounts, AreTheSameSeenFromEitherRound) {
    for (int below = 1; below <= 60; ++below)
        for (int above = 1; above <= 60; ++above)
            EXPECT_EQ(can_be_worked(below, above), can_be_worked(above, below)) << below << " " << above;
}

// Against the stitches themselves: workable is what needs neither three in a loop nor three together.
TEST(WorkableCounts, NeedNothingButIncreasesAndDecreases) {
    for (int below = 1; below <= 40; ++below)
        for (int count = 1; count <= 90; ++count) {
            WorkedEvenly even;
            even.stitches = count;
            const GraphRound round = even_round(even, below, SpacingPhase::at_end, 0);
            int most_feet = 1, most_in_a_loop = 1, in_a_loop = 0;
            for (const GraphStitch& made : round.stitches) {
                most_feet = std::max<int>(most_feet, made.stitch.feet);
                in_a_loop = made.stitch.same_foot ? in_a_loop + 1 : 1;
                most_in_a_loop = std::max(most_in_a_loop, in_a_loop);
            }
            EXPECT_EQ(can_be_worked(below, count), most_feet <= 2 && most_in_a_loop <= 2)
                << count << " over " << below;
        }
}

}  // namespace
}  // namespace roundwright
