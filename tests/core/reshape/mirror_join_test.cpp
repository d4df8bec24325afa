#include "core/reshape/mirror_join.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <random>

#include "tests/core/reshape/random_piece.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

using testing::ball_piece;
using testing::even_counts;
using testing::piece_of;

const Gauge five_mm{5, 5, 0, 0};

TEST(Mirrored, ClosedPiecesReverseTheirRounds) {
    const auto made = mirrored(piece_form(piece_of({6, 12, 18, 18, 9}), five_mm));
    ASSERT_TRUE(made);
    EXPECT_EQ(even_counts(*made), (std::vector<int>{9, 18, 18, 12, 6}));
    EXPECT_EQ(made->end, End::drawn_closed);
}

TEST(Mirrored, AnOpenEndBecomesTheChain) {
    Piece cup = piece_of({6, 12, 18, 24, 24}, End::left_open);
    const auto made = mirrored(piece_form(cup, five_mm));
    ASSERT_TRUE(made);
    EXPECT_EQ(std::get<OpenTube>(made->start).chains, 24);
    EXPECT_EQ(even_counts(*made), (std::vector<int>{24, 18, 12, 6}));
    EXPECT_EQ(made->end, End::drawn_closed);
}

TEST(Mirrored, TwiceIsTheSamePiece) {
    std::mt19937 random(71);
    for (int i = 0; i < testing::random_cases(200); ++i) {
        Piece piece = testing::random_piece(random);
        // An open end on a ring loses its first round to the ring: these come back one round shorter.
        if (std::holds_alternative<MagicRing>(piece.start) && piece.end == End::left_open) continue;
        if (std::holds_alternative<OpenTube>(piece.start) && piece.end == End::drawn_closed) continue;
        const auto once = mirrored(piece_form(piece, five_mm));
        ASSERT_TRUE(once);
        const auto twice = mirrored(piece_form(*once, five_mm));
        ASSERT_TRUE(twice);
        EXPECT_EQ(*twice, piece);
    }
}

/// A ring of few chains holds more stitches than can be closed into as many: the last round is as near as can be
/// worked.
TEST(Mirrored, ARingOfChainsClosesAsFarAsCanBeWorked) {
    const auto last_round = [](int chains, int first_round) {
        Piece piece = piece_of({first_round, 24, 24, 24}, End::drawn_closed);
        piece.start = ChainRing{chains};
        const auto made = mirrored(piece_form(piece, five_mm));
        EXPECT_EQ(made->end, End::left_open);
        return even_counts(*made).back();
    };
    EXPECT_EQ(last_round(4, 15), 8);
    EXPECT_EQ(last_round(8, 15), 8);
    EXPECT_EQ(last_round(10, 15), 10);
    EXPECT_EQ(last_round(40, 15), 30);
}

/// Three stitches in each of the round below cannot be worked back evenly in one round.
TEST(Mirrored, NoRoundClosesFurtherThanCanBeWorked) {
    Piece piece = piece_of({6, 18, 18, 12});
    piece.rounds[1].working = AsWritten{"3 sc in each st around"};
    const auto made = mirrored(piece_form(piece, five_mm));
    ASSERT_TRUE(made);
    EXPECT_EQ(even_counts(*made), (std::vector<int>{12, 18, 18, 9}));
}

TEST(Mirrored, HasTheSameSizeWithinARound) {
    const PieceForm ball = piece_form(ball_piece(6), five_mm);
    const auto made = mirrored(ball);
    ASSERT_TRUE(made);
    const PieceForm turned = piece_form(*made, five_mm);
    EXPECT_NEAR(turned.shape.width_mm, ball.shape.width_mm, 5);
    EXPECT_NEAR(turned.shape.height_mm, ball.shape.height_mm, 5);
}

TEST(Mirrored, CannotTurnAnOvalOrRows) {
    Piece oval = piece_of({18, 24}, End::left_open);
    oval.start = OvalChain{6};
    EXPECT_FALSE(mirrored(piece_form(oval, five_mm)));
    Piece rows = piece_of({12, 12}, End::left_open);
    rows.joining = Joining::rows;
    EXPECT_FALSE(mirrored(piece_form(rows, five_mm)));
    EXPECT_FALSE(mirrored(piece_form(Piece{}, five_mm)));
}

TEST(Joined, ABodyGoesOnIntoAHead) {
    const PieceForm body = piece_form(ball_piece(7), five_mm);
    const PieceForm head = piece_form(ball_piece(5), five_mm);
    EXPECT_EQ(usual_neck(body, head), 15);
    const auto made = joined(body, head, 18);
    ASSERT_TRUE(made);
    const auto counts = even_counts(*made);
    const std::vector<int> neck{30, 24, 18, 18, 24, 30};
    EXPECT_NE(std::search(counts.begin(), counts.end(), neck.begin(), neck.end()), counts.end());
    EXPECT_EQ(counts.front(), 6);
    EXPECT_EQ(counts.back(), 6);
    EXPECT_TRUE(piece_form(*made, five_mm).graph.problems.empty());
}

TEST(Joined, BridgesAStepThatCannotBeWorked) {
    const PieceForm thin = piece_form(piece_of({6, 10, 10, 10}, End::left_open), five_mm);
    Piece wide = piece_of({48, 48, 48}, End::left_open);
    wide.start = OpenTube{48};
    const auto made = joined(thin, piece_form(wide, five_mm), 10);
    ASSERT_TRUE(made);
    EXPECT_EQ(even_counts(*made), (std::vector<int>{6, 10, 10, 10, 16, 22, 28, 34, 40, 46, 48, 48, 48}));
}

TEST(Joined, NeedsTheNeckInBoth) {
    const PieceForm small = piece_form(ball_piece(2), five_mm);
    const PieceForm large = piece_form(ball_piece(6), five_mm);
    EXPECT_FALSE(joined(large, small, 30));
    EXPECT_FALSE(joined(small, large, 30));
}

TEST(Joined, FeaturesGoWithTheirRounds) {
    Piece head = ball_piece(5);
    Feature eyes;
    eyes.round = 7;
    head.features.push_back(eyes);
    const auto made = joined(piece_form(ball_piece(7), five_mm), piece_form(head, five_mm), 18);
    ASSERT_TRUE(made);
    ASSERT_EQ(made->features.size(), 1u);
    // Rounds of the head above the gap are those of the joined piece above it.
    EXPECT_EQ(int(made->rounds.size()) - made->features[0].round, int(head.rounds.size()) - 7);
}

}  // namespace
}  // namespace roundwright
