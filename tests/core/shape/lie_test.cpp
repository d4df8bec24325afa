#include "core/shape/lie.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <string>

#include "core/shape/highest_wave.h"
#include "core/shape/solve_shape.h"
#include "core/shape/wave_length.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

using std::numbers::pi;

std::vector<RoundLie> lies_of(const ShapeProblem& problem) {
    const Shape shape = solve_shape(problem);
    EXPECT_EQ(shape.termination, Termination::converged);
    return lie_of_rounds(problem, shape);
}

std::vector<RoundLie> flat_lies(const std::vector<int>& counts, double height_in_widths = 1) {
    return lies_of(
        piece_of(counts, unstuffed_stretch, MeridianEnd::open, width_mm, height_in_widths * width_mm));
}

bool any(const std::vector<RoundLie>& lies, Lie lie) {
    return std::any_of(lies.begin(), lies.end(), [&](const RoundLie& round) { return round.lie == lie; });
}

bool all(const std::vector<RoundLie>& lies, Lie lie) {
    return std::all_of(lies.begin(), lies.end(), [&](const RoundLie& round) { return round.lie == lie; });
}

// Common practice: six singles more a round lie flat, eight ruffle; seven have 0.114 of their length to
// spare.
TEST(Lie, SixLieFlatSevenAndEightRuffle) {
    EXPECT_TRUE(all(flat_lies(disc_counts(6, 9)), Lie::lies_flat));
    EXPECT_TRUE(any(flat_lies(disc_counts(7, 9)), Lie::ruffles));
    EXPECT_TRUE(any(flat_lies(disc_counts(8, 9)), Lie::ruffles));
    EXPECT_EQ(flat_lies(disc_counts(7, 9)).back().lie, Lie::ruffles);
}

// The published swatch of 20 by 20 singles has h / w = 0.92; six a round lie flat there as well.
TEST(Lie, SixLieFlatAtThePublishedSwatch) {
    EXPECT_TRUE(all(flat_lies(disc_counts(6, 9), 0.92), Lie::lies_flat));
    EXPECT_FALSE(any(flat_lies(disc_counts(6, 15), 0.92), Lie::ruffles));
}

TEST(Lie, FiveCup) {
    const std::vector<RoundLie> lies = flat_lies(disc_counts(5, 9));
    EXPECT_TRUE(all(lies, Lie::cups));
    // Cone of half angle asin(5 / 2 pi) = 52.7285 degrees (computed): rises by h cos of it.
    EXPECT_NEAR(lies[4].rise_mm, width_mm * std::cos(52.7285 * pi / 180), 1e-4);
}

// Common practice: 8 half doubles (1.5 high) and 12 doubles (2 high) more a round lie flat.
TEST(Lie, TallerStitchesLieFlatWithMore) {
    EXPECT_TRUE(all(flat_lies(disc_counts(8, 9), 1.5), Lie::lies_flat));
    EXPECT_TRUE(all(flat_lies(disc_counts(12, 9), 2), Lie::lies_flat));
    EXPECT_TRUE(all(flat_lies(disc_counts(6, 9), 1.5), Lie::cups));
    EXPECT_TRUE(any(flat_lies(disc_counts(12, 9), 1.5), Lie::ruffles));
    EXPECT_TRUE(any(flat_lies(disc_counts(15, 9), 2), Lie::ruffles));
}

// A run counts, not one round: all twelve increases in every second round still make a flat disc.
TEST(Lie, IncreasesEverySecondRoundLieFlat) {
    EXPECT_FALSE(any(flat_lies({6, 12, 12, 24, 24, 36, 36, 48, 48}), Lie::ruffles));
    EXPECT_TRUE(any(flat_lies({6, 12, 12, 30, 30, 48, 48, 66, 66}), Lie::ruffles));
}

TEST(Lie, EvenCloseAndGather) {
    const std::vector<RoundLie> ball =
        lies_of(piece_of(ball_counts(6), medium_stuffing_stretch, MeridianEnd::drawn_closed));
    EXPECT_EQ(ball[8].lie, Lie::even);
    EXPECT_EQ(ball.back().lie, Lie::closes);
    EXPECT_FALSE(any(ball, Lie::ruffles));
    EXPECT_FALSE(any(ball, Lie::gathers));
    const std::vector<RoundLie> bag =
        lies_of(piece_of({6, 12, 18, 24, 24, 24, 24, 12}, medium_stuffing_stretch, MeridianEnd::open));
    EXPECT_EQ(bag.back().lie, Lie::gathers);
    EXPECT_GT(bag.back().spare_length_mm, 0);
    const std::vector<RoundLie> smoother =
        lies_of(piece_of({6, 12, 18, 24, 24, 24, 24, 18, 12}, medium_stuffing_stretch, MeridianEnd::open));
    EXPECT_FALSE(any(smoother, Lie::gathers));
}

// Growth ratio and flat increase by counts: 2 pi h / w.
TEST(Lie, GivesGrowthAndFlatIncrease) {
    const std::vector<RoundLie> lies = flat_lies({6, 12, 20, 20, 14});
    EXPECT_NEAR(lies[1].growth, 6 / (2 * pi), 1e-12);
    EXPECT_NEAR(lies[2].growth, 8 / (2 * pi), 1e-12);
    EXPECT_EQ(lies[3].growth, 0);
    EXPECT_NEAR(lies[4].growth, -6 / (2 * pi), 1e-12);
    EXPECT_NEAR(lies[1].flat_increase, 2 * pi, 1e-12);
}

// The waves of a ruffle take up exactly what is left to spare once the loop is pushed together by a
// twentieth: arc length of a sine round the circle (DLMF ch. 19).
TEST(Lie, WavesTakeUpTheSpareLength) {
    const ShapeProblem problem = piece_of(disc_counts(8, 9), unstuffed_stretch, MeridianEnd::open);
    const Shape shape = solve_shape(problem);
    const std::vector<RoundLie> lies = lie_of_rounds(problem, shape);
    const RoundLie& edge = lies.back();
    ASSERT_EQ(edge.lie, Lie::ruffles);
    const double circle = 2 * pi * shape.radius_mm.back();
    const double waving = 0.95 * problem.rest_loop_mm.back();
    EXPECT_NEAR(edge.spare_length_mm, waving - circle, 1e-9);
    const double amplitude = edge.wave_height_mm / 2;
    const double length = circle * wave_length_ratio(amplitude / (circle / edge.waves));
    EXPECT_NEAR(length, waving, 1e-6 * length);
    EXPECT_LE(amplitude, width_mm);
    const double with_fewer = circle / (edge.waves - 1) * wave_amplitude(length / circle);
    EXPECT_GT(with_fewer, width_mm) << "one wave fewer would do";
}

TEST(Lie, HighestWaveIsThatOfTheRoundsThatRuffle) {
    const std::vector<RoundLie> ruffled = flat_lies(disc_counts(8, 9));
    EXPECT_EQ(highest_wave_mm(ruffled), ruffled.back().wave_height_mm);
    EXPECT_EQ(highest_wave_mm(flat_lies(disc_counts(6, 9))), 0);
    EXPECT_EQ(highest_wave_mm({}), 0);
}

TEST(Lie, RunOfRufflesHasOneWaveCount) {
    const std::vector<RoundLie> lies = flat_lies(disc_counts(10, 9));
    for (const RoundLie& lie : lies) {
        if (lie.lie == Lie::ruffles) {
            EXPECT_EQ(lie.waves, lies.back().waves);
            EXPECT_GE(lie.waves, 2);
        } else {
            EXPECT_EQ(lie.waves, 0);
        }
    }
}

TEST(Lie, NothingForNoShape) {
    EXPECT_TRUE(lie_of_rounds({}, {}).empty());
    EXPECT_TRUE(lie_of_rounds(piece_of({6, 12}, 0, MeridianEnd::open), {}).empty());
}

}  // namespace
}  // namespace roundwright::test
