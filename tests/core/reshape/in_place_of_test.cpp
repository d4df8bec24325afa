#include "core/reshape/in_place_of.h"

#include <gtest/gtest.h>

#include "core/reshape/forms.h"
#include "core/reshape/reshape_toy.h"
#include "tests/core/reshape/random_piece.h"

namespace roundwright {
namespace {

using testing::ball_piece;

const Gauge gauge{5, 4.8, 0, 0};

PieceForm head() {
    Piece piece = ball_piece(6);  // 17 rounds, 36 stitches at the widest
    piece.name = "Head";
    piece.make = 2;
    Feature eyes;
    eyes.round = 8;  // in the middle
    eyes.stitches_apart = 9;
    piece.features = {eyes};
    piece.worked = {4, 2, {}};
    return piece_form(piece, gauge);
}

FrogBack back_for(const PieceForm& old, const PieceForm& made) {
    Toy toy;
    toy.yarns.resize(1);
    toy.pieces = {old.piece};
    return frog_back_for(toy, old, made);
}

TEST(InPlaceOf, KeepsNameNumberAndStuffing) {
    const PieceForm old = head();
    const PieceForm made = piece_from_form(usual_form(FormKind::egg, 80), gauge).form;
    const Piece piece = in_place_of(old, made, back_for(old, made));
    EXPECT_EQ(piece.name, "Head");
    EXPECT_EQ(piece.make, 2);
    EXPECT_EQ(piece.area_stretch, old.piece.area_stretch);
    EXPECT_EQ(piece.rounds, made.piece.rounds);
    EXPECT_EQ(piece.end, made.piece.end);
}

TEST(InPlaceOf, TheFaceStaysAtItsHeightAndItsAngle) {
    const PieceForm old = head();
    const PieceForm made = piece_from_form(usual_form(FormKind::ball, 120), gauge).form;
    const Piece piece = in_place_of(old, made, back_for(old, made));
    ASSERT_EQ(piece.features.size(), 1u);
    const auto counts = stitch_counts(made.graph.graph);
    const int round = piece.features[0].round;
    EXPECT_NEAR(double(round) / double(counts.size()), 8.0 / 17, 0.06);
    EXPECT_NEAR(double(piece.features[0].stitches_apart) / counts[std::size_t(round)], 9.0 / 36, 0.02);
}

TEST(InPlaceOf, APieceBegunAtItsTopHasItsFaceTurnedWithIt) {
    PieceForm old = head();
    old.piece.features[0].round = 12;  // of 17 from the bottom: in the upper half
    const PieceForm made = piece_from_form(usual_form(FormKind::half_ball, 90), gauge).form;
    ASSERT_TRUE(made.piece.starts_at_top);
    const Piece piece = in_place_of(old, made, back_for(old, made));
    EXPECT_LT(piece.features[0].round, int(made.piece.rounds.size()) / 2);
}

TEST(InPlaceOf, ProgressIsWhatMayStay) {
    const PieceForm old = head();
    const PieceForm made = piece_from_form(usual_form(FormKind::ball, 120), gauge).form;
    const FrogBack back = back_for(old, made);
    EXPECT_GE(back.keep_rounds, 2);  // 6, 12 ... begin both
    const Piece piece = in_place_of(old, made, back);
    EXPECT_EQ(piece.worked.rounds, back.keep_rounds);
}

}  // namespace
}  // namespace roundwright
