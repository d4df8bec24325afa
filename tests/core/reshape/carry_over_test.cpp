#include "core/reshape/carry_over.h"

#include <gtest/gtest.h>
#include <random>
#include <set>

#include "core/reshape/resize.h"
#include "core/rounds/piece_graph.h"
#include "tests/core/reshape/random_piece.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

using testing::ball_piece;
using testing::piece_of;

const Gauge five_mm{5, 5, 0, 0};

Target scale(double factor) {
    Target target;
    target.scale = factor;
    return target;
}

Piece striped_ball() {
    Piece ball = ball_piece(6);
    for (std::size_t i = 7; i < 10; ++i) ball.rounds[i].yarn = 1;
    ball.rounds[12].yarn = 2;
    ball.rounds[2].lies_flat = true;
    ball.rounds[8].note = "change to the pale yarn";
    return ball;
}

double middle_of_yarn(const Piece& piece, std::size_t yarn) {
    double sum = 0;
    int rounds = 0;
    for (std::size_t i = 0; i < piece.rounds.size(); ++i)
        if (piece.rounds[i].yarn == yarn) {
            sum += double(i) + 0.5;
            ++rounds;
        }
    return rounds > 0 ? sum / rounds / double(piece.rounds.size()) : -1;
}

TEST(CarryOver, BandsKeepTheirRelativeHeight) {
    const Piece ball = striped_ball();
    for (double factor : {0.4, 0.6, 1.3, 2.0, 3.1}) {
        const Piece made = resize(piece_form(ball, five_mm), scale(factor)).form.piece;
        const double round = 1.0 / double(made.rounds.size()) + 0.25 / double(ball.rounds.size());
        EXPECT_NEAR(middle_of_yarn(made, 1), middle_of_yarn(ball, 1), round) << factor;
        EXPECT_NEAR(middle_of_yarn(made, 2), middle_of_yarn(ball, 2), round) << factor;
    }
}

TEST(CarryOver, ABandIsAsManyTimesAsHighAsThePiece) {
    const Piece made = resize(piece_form(striped_ball(), five_mm), scale(2)).form.piece;
    int rounds = 0;
    for (const Round& round : made.rounds) rounds += round.yarn == 1;
    EXPECT_NEAR(rounds, 6, 1);
}

TEST(CarryOver, NoYarnMarkOrNoteIsLost) {
    std::mt19937 random(31);
    for (int i = 0; i < testing::random_cases(300); ++i) {
        const Piece old = testing::random_piece(random);
        const Reshaped made = resize(piece_form(old, five_mm), scale(0.5));
        if (!has_piece(made.code)) continue;
        std::string notes;
        int marks = 0;
        for (const Round& round : made.form.piece.rounds) {
            notes += round.note + "; ";
            marks += round.lies_flat;
        }
        bool marked = false;
        for (const Round& round : old.rounds) {
            marked = marked || round.lies_flat;
            if (!round.note.empty()) {
                EXPECT_NE(notes.find(round.note + ";"), std::string::npos) << round.note;
            }
        }
        EXPECT_EQ(marked, marks > 0);
    }
}

TEST(CarryOver, EveryNoteIsThereOnce) {
    const Piece made = resize(piece_form(striped_ball(), five_mm), scale(3)).form.piece;
    int notes = 0;
    for (const Round& round : made.rounds) notes += !round.note.empty();
    EXPECT_EQ(notes, 1);
}

TEST(CarryOver, EyesKeepTheirAngleAndRelativeHeight) {
    Piece ball = ball_piece(6);
    Feature eyes;
    eyes.round = 8;
    eyes.stitches_apart = 9;
    ball.features.push_back(eyes);
    const Piece made = resize(piece_form(ball, five_mm), scale(2)).form.piece;
    ASSERT_EQ(made.features.size(), 1u);
    const Feature& moved = made.features.front();
    EXPECT_NEAR((moved.round + 1.0) / double(made.rounds.size()), 9.0 / 17, 1.0 / 17);
    EXPECT_NEAR(moved.stitches_apart, 18, 1);
    EXPECT_EQ(moved.width_mm, eyes.width_mm);  // eyes are bought by size
}

TEST(CarryOver, WhatIsStuffedIsTheSamePartOfThePiece) {
    Piece ball = ball_piece(6);
    ball.stuffed_rounds = RoundSpan{0, 8};
    for (const double factor : {0.6, 2.0}) {
        const Piece made = resize(piece_form(ball, five_mm), scale(factor)).form.piece;
        ASSERT_TRUE(made.stuffed_rounds);
        EXPECT_EQ(made.stuffed_rounds->first, 0);
        EXPECT_NEAR((made.stuffed_rounds->last + 1.0) / double(made.rounds.size()), 9.0 / 17, 1.0 / 10);
    }
}

TEST(CarryOver, WordsThatStillFitStay) {
    Piece old = piece_of({6, 12, 12, 18});
    const StitchGraph graph = piece_graph(old).graph;
    old.rounds[1].working = AsWritten{"inc around"};
    old.rounds[2].working = AsWritten{"sc around"};
    const CarriedOver same = carry_over(old, graph, {6, 12, 12, 12, 14}, 0, {0, 1, 2, 2, 3});
    EXPECT_EQ(same.piece.rounds[1].working, old.rounds[1].working);
    EXPECT_EQ(same.piece.rounds[2].working, old.rounds[2].working);
    EXPECT_EQ(same.piece.rounds[3].working, old.rounds[2].working);
    EXPECT_TRUE(same.rewritten.empty());
    const CarriedOver other = carry_over(old, graph, {6, 10, 12, 14}, 0, {0, 1, 2, 3});
    EXPECT_TRUE(std::holds_alternative<WorkedEvenly>(other.piece.rounds[1].working));
    EXPECT_EQ(other.rewritten, (std::vector<int>{1, 2}));
}

TEST(CarryOver, ARewrittenRoundIsWorkedInWhatMostOfItWas) {
    GraphRound round;
    for (StitchKind kind :
         {StitchKind::half_double_crochet, StitchKind::half_double_crochet, StitchKind::single_crochet,
          StitchKind::chain, StitchKind::chain, StitchKind::chain})
        round.stitches.push_back({Stitch{kind, LoopPart::back}, 0});
    EXPECT_EQ(worked_mostly(round).kind, StitchKind::half_double_crochet);
    EXPECT_EQ(worked_mostly(round).part, LoopPart::back);
    EXPECT_EQ(worked_mostly(GraphRound{}), WorkedEvenly{});
}

}  // namespace
}  // namespace roundwright
