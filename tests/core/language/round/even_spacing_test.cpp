#include "core/language/round/even_spacing.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <string>

namespace roundwright {
namespace {

std::string drawn(const std::vector<bool>& places) {
    std::string text;
    for (bool place : places) text += place ? 'x' : '.';
    return text;
}

std::string from_first_pick(std::string text) {
    std::rotate(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(text.find('x')), text.end());
    return text;
}

bool is_rotation(const std::string& a, const std::string& b) {
    return a.size() == b.size() && (a + a).find(b) != std::string::npos;
}

// Toussaint, The Euclidean Algorithm Generates Traditional Musical Rhythms (BRIDGES 2005), up to rotation.
TEST(EvenPlaces, AreToussaintsRhythms) {
    for (const SpacingPhase phase : {SpacingPhase::at_end, SpacingPhase::at_middle}) {
        EXPECT_TRUE(is_rotation(drawn(even_places(3, 8, phase)), "x..x..x."));
        EXPECT_TRUE(is_rotation(drawn(even_places(5, 8, phase)), "x.x.xx.x"));
        EXPECT_TRUE(is_rotation(drawn(even_places(5, 12, phase)), "x..x.x..x.x."));
        EXPECT_TRUE(is_rotation(drawn(even_places(7, 16, phase)), "x..x.x.x..x.x.x."));
    }
}

TEST(EvenPlaces, EveryGapDiffersByAtMostOne) {
    for (int places = 1; places <= 60; ++places)
        for (int picks = 1; picks <= places; ++picks)
            for (const SpacingPhase phase : {SpacingPhase::at_end, SpacingPhase::at_middle}) {
                const std::string text = from_first_pick(drawn(even_places(picks, places, phase))) + "x";
                ASSERT_EQ(std::count(text.begin(), text.end(), 'x'), picks + 1);
                for (std::size_t at = 0; at + 1 < text.size();) {
                    const std::size_t next = text.find('x', at + 1);
                    const int gap = static_cast<int>(next - at);
                    ASSERT_GE(gap, places / picks);
                    ASSERT_LE(gap, (places + picks - 1) / picks);
                    at = next;
                }
            }
}

TEST(EvenPlaces, TheMiddlePhaseFallsHalfwayBetweenTheEndPhase) {
    EXPECT_EQ(drawn(even_places(6, 24, SpacingPhase::at_end)), "...x...x...x...x...x...x");
    EXPECT_EQ(drawn(even_places(6, 24, SpacingPhase::at_middle)), ".x...x...x...x...x...x..");
}

// Any count over any other: all loops taken, none twice, in order.
TEST(EvenRound, TakesEveryLoopOnceInOrder) {
    for (int below = 1; below <= 40; ++below)
        for (int count = 1; count <= 100; ++count) {
            WorkedEvenly working;
            working.stitches = count;
            const GraphRound round = even_round(working, below, SpacingPhase::at_middle, 0);
            ASSERT_EQ(round.loops_left, count);
            int taken = 0;
            for (const GraphStitch& made : round.stitches) {
                ASSERT_EQ(made.first_foot, made.stitch.same_foot ? taken - 1 : taken);
                taken += loops_taken(made.stitch);
            }
            ASSERT_EQ(taken, below) << count << " over " << below;
        }
}

TEST(EvenRound, NoStitchesLeaveNothingWorked) {
    for (const int below : {0, 12}) {
        const GraphRound round = even_round(WorkedEvenly{0}, below, SpacingPhase::at_end, 0);
        EXPECT_TRUE(round.stitches.empty());
        EXPECT_EQ(round.loops_below, below);
        EXPECT_EQ(round.loops_left, 0);
    }
}

TEST(EvenRound, ThreeOrMoreGoIntoALoopBeyondDoublingAndTogetherBelowHalf) {
    WorkedEvenly working;
    working.stitches = 18;
    EXPECT_TRUE(even_round(working, 6, SpacingPhase::at_end, 0).stitches[2].stitch.same_foot);
    working.stitches = 4;
    EXPECT_EQ(even_round(working, 12, SpacingPhase::at_end, 0).stitches[3].stitch.feet, 3);
}

TEST(EvenRound, NoStitchesLeaveNoLoops) {
    WorkedEvenly working;
    working.stitches = -4;
    EXPECT_TRUE(even_round(working, 6, SpacingPhase::at_end, 0).stitches.empty());
    EXPECT_EQ(even_round(working, 6, SpacingPhase::at_end, 0).loops_left, 0);
}

TEST(Repeatable, WhenTheGroupsComeOutWhole) {
    EXPECT_TRUE(is_repeatable(12, 18));
    EXPECT_TRUE(is_repeatable(18, 12));
    EXPECT_TRUE(is_repeatable(0, 6));
    EXPECT_TRUE(is_repeatable(24, 24));
    EXPECT_FALSE(is_repeatable(24, 31));
    EXPECT_FALSE(is_repeatable(31, 24));
}

}  // namespace
}  // namespace roundwright
