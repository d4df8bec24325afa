#include "core/reshape/compare.h"

#include <gtest/gtest.h>

#include "tests/core/reshape/random_piece.h"

namespace roundwright {
namespace {

using testing::ball_piece;
using testing::piece_of;

const Gauge five_mm{5, 5, 0, 0};

TEST(Compare, ListsBothRoundByRound) {
    const Comparison c =
        compare(piece_form(piece_of({6, 12, 18, 12}), five_mm), piece_form(piece_of({6, 12, 15}), five_mm));
    ASSERT_EQ(c.rounds.size(), 4u);
    EXPECT_TRUE(c.rounds[1].same);
    EXPECT_FALSE(c.rounds[2].same);
    EXPECT_EQ(c.rounds[2].old_stitches, 18);
    EXPECT_EQ(c.rounds[2].new_stitches, 15);
    EXPECT_EQ(c.rounds[3].old_stitches, 12);
    EXPECT_FALSE(c.rounds[3].new_stitches);
    EXPECT_EQ(c.first_difference, 2);
    EXPECT_EQ(c.old_total, 48);
    EXPECT_EQ(c.new_total, 33);
}

// Ball of common practice: 432 stitches for n = 6, 192 for n = 4 (computed).
TEST(Compare, TotalsAndSizes) {
    const PieceForm large = piece_form(ball_piece(6), five_mm);
    const PieceForm small = piece_form(ball_piece(4), five_mm);
    const Comparison c = compare(large, small);
    EXPECT_EQ(c.old_total, 432);
    EXPECT_EQ(c.new_total, 192);
    EXPECT_EQ(c.old_size, large.size());
    EXPECT_EQ(c.new_size, small.size());
    EXPECT_GT(c.outlines_apart_mm, 5);
    EXPECT_EQ(compare(large, large).outlines_apart_mm, 0);
    EXPECT_EQ(compare(large, large).first_difference, 17);
}

TEST(Compare, AnotherStartDiffersFromTheFirstRound) {
    Piece tube = piece_of({12, 12}, End::left_open);
    tube.start = OpenTube{12};
    Piece ring = piece_of({12, 12}, End::left_open);
    EXPECT_EQ(compare(piece_form(tube, five_mm), piece_form(ring, five_mm)).first_difference, 0);
}

}  // namespace
}  // namespace roundwright
