#include "core/assembly/move_join.h"

#include <gtest/gtest.h>

#include "core/assembly/join_frames.h"
#include "core/assembly/study_solved.h"
#include "tests/support/plain_pieces.h"

namespace roundwright {
namespace {

SolvedPiece solved(const Piece& piece) {
    Toy toy;
    toy.pieces.push_back(piece);
    return solved_piece(toy, 0, study_shape(toy, 0));
}

TEST(PlaceNear, FindsEveryGapAndHalfStitchFromItsOwnPoint) {
    for (const bool at_top : {false, true}) {
        Piece ball = test::ball_piece(36);
        ball.starts_at_top = at_top;
        const SolvedPiece piece = solved(ball);
        for (int round = 0; round + 1 < static_cast<int>(piece.stitches.size()); ++round) {
            const double most = piece.stitches[static_cast<std::size_t>(round)] / 2.0;
            for (double right = -most + 0.5; right < most; right += 2.5) {
                const JoinPlace place{round, right, false};
                const auto frame = frame_of_place(piece, place);
                ASSERT_TRUE(frame);
                EXPECT_EQ(place_near(piece, frame->point), place) << round << " " << right;
                // A little off the fabric is the same place.
                EXPECT_EQ(place_near(piece, frame->point + 0.3 * frame->out), place);
            }
        }
    }
}

TEST(PlaceNear, GoesToThePolesAtTheEnds) {
    const SolvedPiece piece = solved(test::ball_piece(36));
    const int last = static_cast<int>(piece.stitches.size()) - 1;
    EXPECT_EQ(place_near(piece, {0, -1, 0}).round, -1);
    EXPECT_EQ(place_near(piece, {0, piece.measures.height_mm + 1, 0}).round, last);
}

TEST(NudgedJoin, MovesByRoundsAndStitchesAndStaysOnThePiece) {
    const std::vector<int> stitches{6, 12, 18, 18, 12, 6};
    EXPECT_EQ(nudged({1, 3, false}, 1, 0, stitches), (JoinPlace{2, 4.5, false}));
    EXPECT_EQ(nudged({2, 4.5, false}, 1, 0, stitches), (JoinPlace{3, 4.5, false}));
    EXPECT_EQ(nudged({2, 4.5, false}, 0, 1, stitches), (JoinPlace{2, 5.5, false}));
    EXPECT_EQ(nudged({2, 9, false}, 0, 1, stitches), (JoinPlace{2, -8, false}));
    EXPECT_EQ(nudged({0, 0, false}, -5, 0, stitches).round, -1);
    EXPECT_EQ(nudged({4, 0, false}, 9, 0, stitches).round, 5);
    // From an end and back it is where it was.
    EXPECT_EQ(nudged(nudged({4, 3, false}, 1, 0, stitches), -1, 0, stitches), (JoinPlace{4, 3, false}));
    // Sideways at an end there is nowhere to go.
    EXPECT_EQ(nudged({-1, 0, false}, 0, 1, stitches), (JoinPlace{-1, 0, false}));
}

TEST(HangsOn, FollowsEveryJoin) {
    PlacedToy placed;
    placed.pieces.resize(4);
    placed.pieces[1].onto = 0;
    placed.pieces[2].onto = 1;
    EXPECT_TRUE(hangs_on(placed, 2, 0));
    EXPECT_TRUE(hangs_on(placed, 2, 2));
    EXPECT_FALSE(hangs_on(placed, 0, 2));
    EXPECT_FALSE(hangs_on(placed, 3, 0));
}

}  // namespace
}  // namespace roundwright
