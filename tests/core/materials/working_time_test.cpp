#include "core/materials/working_time.h"

#include <gtest/gtest.h>

#include "core/stitches/stitch_measure.h"
#include "tests/core/materials/even_piece.h"

namespace roundwright {
namespace {

TEST(WorkingTime, TheMakersPaceRules) {
    Making making;
    making.stitches_per_minute = 20;
    const Estimate minutes = working_minutes(1200, making);  // a ball of n = 10 has 1200 stitches
    EXPECT_DOUBLE_EQ(minutes.likely, 60);
    EXPECT_DOUBLE_EQ(minutes.low, 60 / 1.15);
    EXPECT_DOUBLE_EQ(minutes.high, 60 / 0.85);
}

TEST(WorkingTime, AnImpossiblePaceIsNotUsed) {
    Making making;
    making.stitches_per_minute = 0;
    EXPECT_EQ(working_minutes(180, making), working_minutes(180, {}));
}

// 600 stitches in 37 minutes is a fast hand: it lies at the quick end of the guess.
TEST(WorkingTime, TheGuessIsAnUnhurriedHand) {
    const Estimate minutes = working_minutes(600, {});
    EXPECT_GE(minutes.likely, 55);
    EXPECT_LE(minutes.low, 38);
    EXPECT_GE(minutes.high, 90);
}

// Arithmetic: rounds of 12 and 18 single crochets in 60 and 120 seconds are 30 in 3 minutes.
TEST(WorkingTime, TimedRoundsGiveThePace) {
    Piece piece;
    piece.worked.seconds_of_round = {0, 60, 120};
    const StitchGraph graph = testing::plain_graph({12, 12, 18, 24});
    const TimedWork timed = timed_work(piece, graph);
    EXPECT_EQ(timed.rounds, 2);
    EXPECT_DOUBLE_EQ(timed.minutes, 3);
    ASSERT_TRUE(timed.pace());
    double single_crochets = 0;
    for (const std::size_t round : {1, 2})
        for (const GraphStitch& stitch : graph.rounds[round].stitches)
            single_crochets += yarn_in_sc(stitch.stitch);
    EXPECT_DOUBLE_EQ(*timed.pace(), single_crochets / 3);
}

TEST(WorkingTime, RoundsTickedOffUnworkedOrLeftLyingAreNoPace) {
    Piece piece;
    piece.worked.seconds_of_round = {0.5, 3'600, 0};
    const TimedWork timed = timed_work(piece, testing::plain_graph({12, 12, 12}));
    EXPECT_EQ(timed.rounds, 0);
    EXPECT_FALSE(timed.pace());
    piece.worked.seconds_of_round.assign(9, 60);
    EXPECT_EQ(timed_work(piece, testing::plain_graph({12})).rounds, 1);
}

}  // namespace
}  // namespace roundwright
