#include "render/pages/round_lines.h"

#include <gtest/gtest.h>

#include "render/pages/round_remarks.h"
#include "tests/render/pages/demo_toys.h"

namespace roundwright::render {
namespace {

using testing::ball;
using testing::ball_counts;
using testing::piece_of;
using testing::puffin;

std::vector<RoundLine> lines_of(const Piece& piece, const std::vector<int>& break_after = {}) {
    return round_lines(piece, piece_graph(piece), Terms::us, break_after);
}

TEST(RoundLines, EveryRoundIsInOneLine) {
    for (const Piece& piece : puffin().pieces) {
        int next = 0;
        for (const RoundLine& line : lines_of(piece)) {
            EXPECT_EQ(line.first, next);
            next = line.last + 1;
        }
        EXPECT_EQ(next, static_cast<int>(piece.rounds.size()));
    }
}

TEST(RoundLines, EqualRoundsFold) {
    const std::vector<RoundLine> lines = lines_of(piece_of("Ball", ball_counts(6)));
    ASSERT_EQ(lines.size(), 12u);
    EXPECT_EQ(lines[6].first, 6);
    EXPECT_EQ(lines[6].last, 11);
    EXPECT_EQ(lines[6].stitches, 36);
}

TEST(RoundLines, WhatDiffersStaysApart) {
    Piece piece = piece_of("Tube", {12, 12, 12, 12, 12, 12});
    piece.rounds[2].yarn = 1;
    piece.rounds[4].note = "here";
    const std::vector<RoundLine> lines = lines_of(piece);
    // 1 | 2 | 3 in another yarn | 4 back | 5 with a note | 6; round 1 is worked into the ring.
    ASSERT_EQ(lines.size(), 6u);
    EXPECT_TRUE(lines[2].new_yarn);
    EXPECT_TRUE(lines[3].new_yarn);
    EXPECT_FALSE(lines[0].new_yarn);
}

TEST(RoundLines, ALineEndsWhereSomethingIsToBeDone) {
    const std::vector<RoundLine> lines = lines_of(piece_of("Ball", ball_counts(6)), {8});
    ASSERT_EQ(lines.size(), 13u);
    EXPECT_EQ(lines[6].last, 8);
    EXPECT_EQ(lines[7].first, 9);
}

TEST(RoundRemarks, StuffingIsAskedForWhileItStillGoesIn) {
    const Toy toy = ball(8);
    const PieceStudy study = study_piece(toy, 0);
    const std::vector<RoundRemark> remarks = round_remarks(toy.pieces[0], study);
    ASSERT_FALSE(remarks.empty());
    EXPECT_TRUE(remarks.front().text.contains(QStringLiteral("stuff")));
    EXPECT_GE(remarks.front().after, 15);  // not before the last of the even rounds
    EXPECT_LT(remarks.front().after, 22);
}

TEST(RoundRemarks, EyesComeInAfterTheirRoundAndBeforeTheEnd) {
    Toy toy = ball(8);
    Feature eyes;
    eyes.round = 12;
    eyes.stitches_apart = 9;
    toy.pieces[0].features = {eyes};
    const std::vector<RoundRemark> remarks = round_remarks(toy.pieces[0], study_piece(toy, 0));
    ASSERT_FALSE(remarks.empty());
    EXPECT_TRUE(remarks.front().text.contains(QStringLiteral("between rounds 13 and 14, 9 stitches apart")))
        << remarks.front().text.toStdString();
    EXPECT_GE(remarks.front().after, 13);
}

TEST(RoundRemarks, NothingToDoInAFlatPiece) {
    Toy toy = ball(4);
    toy.pieces[0].area_stretch = 0;
    EXPECT_TRUE(round_remarks(toy.pieces[0], study_piece(toy, 0)).empty());
}

}  // namespace
}  // namespace roundwright::render
