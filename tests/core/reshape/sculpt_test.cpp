#include "core/reshape/sculpt.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "tests/core/reshape/random_piece.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

using testing::ball_piece;
using testing::even_counts;

const Gauge five_mm{5, 5, 0, 0};
const Gauge worsted{5.2, 4.9, 0, 0};

// A head: wider than tall, with a straight stretch around its middle.
SculptStart head() {
    std::vector<int> counts;
    for (int n = 6; n <= 48; n += 6) counts.push_back(n);
    counts.insert(counts.end(), 8, 48);
    for (int n = 42; n >= 6; n -= 6) counts.push_back(n);
    return sculpt_start(piece_form(testing::piece_of(counts), worsted));
}

TEST(Sculpt, AnUntouchedOutlineChangesNoRound) {
    std::mt19937 random(61);
    for (int i = 0; i < testing::random_cases(300); ++i) {
        const Piece piece = testing::random_piece(random);
        const SculptStart start = sculpt_start(piece_form(piece, testing::random_gauge(random)));
        const Sculpted made = sculpt(start, start.outline, 0.5);
        ASSERT_TRUE(made.usable);
        EXPECT_EQ(made.piece, piece) << "case " << i;
    }
}

TEST(Sculpt, ADragMovesItsNeighbourhoodSmoothlyAndNothingElse) {
    const SculptStart start = sculpt_start(piece_form(ball_piece(6), five_mm));
    const Silhouette out = dragged(start.outline, 9, Vec2(8, 0), 30);
    EXPECT_NEAR(out.points[9].x(), start.outline.points[9].x() + 8, 1e-12);
    EXPECT_GT(out.points[8].x(), start.outline.points[8].x());
    EXPECT_LT(out.points[8].x() - start.outline.points[8].x(), 8);
    EXPECT_EQ(out.points[1], start.outline.points[1]);
    EXPECT_EQ(out.points.back(), start.outline.points.back());
    const Silhouette far_in = dragged(start.outline, 9, Vec2(-100, 3), 30);
    EXPECT_GE(far_in.points[9].x(), 0);
    const Silhouette pole = dragged(start.outline, 0, Vec2(5, -4), 20);
    EXPECT_EQ(pole.points[0].x(), 0);
    EXPECT_NEAR(pole.points[0].y(), start.outline.points[0].y() - 4, 1e-12);
}

TEST(Sculpt, PullingTheMiddleOutWidensThePiece) {
    const SculptStart start = sculpt_start(piece_form(ball_piece(6), five_mm));
    const Silhouette out = dragged(start.outline, 9, Vec2(10, 0), 45);
    const Sculpted made = sculpt(start, out, 0.5);
    ASSERT_TRUE(made.usable);
    EXPECT_NEAR(made.shape.width_mm, start.form.shape.width_mm + 20, 7);
    EXPECT_LT(made.apart_mm, 4);
    const auto counts = even_counts(made.piece);
    EXPECT_GT(*std::max_element(counts.begin(), counts.end()), 40);
}

TEST(Sculpt, AWaistPulledInNarrowsOnlyThere) {
    const SculptStart start = sculpt_start(piece_form(ball_piece(6), five_mm));
    const Sculpted made = sculpt(start, dragged(start.outline, 13, Vec2(-9, 0), 18), 0.5);
    ASSERT_TRUE(made.usable);
    const auto before = even_counts(start.form.piece);
    const auto counts = even_counts(made.piece);
    EXPECT_TRUE(std::equal(before.begin(), before.begin() + 8, counts.begin()));
    EXPECT_LT(counts[12], before[12]);
}

TEST(Sculpt, WhateverIsDraggedStaysWorkable) {
    std::mt19937 random(62);
    std::uniform_real_distribution<double> move(-60, 60);
    for (int i = 0; i < testing::random_cases(500); ++i) {
        const SculptStart start = sculpt_start(piece_form(testing::random_piece(random), five_mm));
        const auto points = start.outline.points.size();
        const auto at = std::uniform_int_distribution<std::size_t>(0, points - 1)(random);
        const Sculpted made =
            sculpt(start, dragged(start.outline, at, {move(random), move(random)}, 25), 0.5);
        if (!made.usable) continue;
        const PieceForm form = piece_form(made.piece, five_mm);
        EXPECT_TRUE(form.graph.problems.empty());
        int below = form.graph.graph.foundation_loops;
        for (const GraphRound& round : form.graph.graph.rounds) {
            EXPECT_TRUE(below == 0 || (round.loops_left <= 2 * below && 2 * round.loops_left >= below));
            below = round.loops_left;
        }
    }
}

// Rounds laid off along such a rim come out 83 mm wide when stuffed: it needs more of them, and wider ones.
TEST(Sculpt, ARimPulledOutComesOutMostOfTheWay) {
    const SculptStart start = head();
    const Silhouette rim = dragged(start.outline, 16, Vec2(9.8, 0), 22);
    const Sculpted made = sculpt(start, rim, 0.5);
    ASSERT_TRUE(made.usable);
    const double before = start.form.shape.width_mm;
    EXPECT_GT(made.shape.width_mm - before, 0.4 * (width_mm(rim) - before));
    EXPECT_LT(made.apart_mm, 0.7 * distance_mm(start.outline, rim));
    EXPECT_NEAR(made.shape.height_mm, height_mm(rim), worsted.round_height_mm / 2);
}

TEST(Sculpt, IsNearerToTheLineThanThePieceWas) {
    std::mt19937 random(63);
    std::uniform_real_distribution<double> move(-12, 12);
    const SculptStart start = head();
    double before = 0;
    double after = 0;
    for (int i = 0; i < 100; ++i) {
        const auto at = std::uniform_int_distribution<std::size_t>(0, 24)(random);
        const Silhouette line = dragged(start.outline, at, {move(random), move(random)}, 25);
        const Sculpted made = sculpt(start, line, 0.5);
        ASSERT_TRUE(made.usable);
        const double untouched = distance_mm(start.outline, line);
        EXPECT_LE(made.apart_mm, untouched + 0.75) << "case " << i;  // tidy rounds cost a little
        before += untouched;
        after += made.apart_mm;
    }
    EXPECT_LT(after, 0.56 * before);  // no nearer: rounds that would gather or ruffle are not taken
}

// Twice as many stitches would follow a corner more closely, and ruffle.
TEST(Sculpt, NoCornerIsBoughtWithRuffles) {
    const SculptStart start = head();
    for (const Vec2& by : {Vec2(7.8, -7.4), Vec2(12, 0), Vec2(0, -12)}) {
        const Sculpted made = sculpt(start, dragged(start.outline, 6, by, 22), 0.5);
        ASSERT_TRUE(made.usable);
        const auto counts = even_counts(made.piece);
        for (std::size_t i = 1; i < counts.size(); ++i)
            EXPECT_LE(std::abs(counts[i] - counts[i - 1]), flat_growth(worsted) + 4)
                << i + 1;  // tidy: by threes
    }
}

TEST(Sculpt, AnOutlineOfNothingIsNotUsable) {
    const SculptStart start = sculpt_start(piece_form(ball_piece(4), five_mm));
    Silhouette nothing = start.outline;
    for (Vec2& p : nothing.points) p = Vec2(0, 0);
    EXPECT_FALSE(sculpt(start, nothing, 0.5).usable);
    EXPECT_FALSE(sculpt(start, {}, 0.5).usable);
}

}  // namespace
}  // namespace roundwright
