#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <random>

#include "core/rounds/piece_graph.h"
#include "core/shape/fabric_thickness.h"
#include "core/shape/lies_limp.h"
#include "core/shape/solve_shape.h"
#include "core/shape/yield_flat.h"
#include "tests/core/shape/random_table.h"
#include "tests/core/shape/random_toy.h"
#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

using std::numbers::pi;

constexpr double stitch_mm = 5;
const Gauge gauge{stitch_mm, stitch_mm, 0, 0};

Piece piece_of(const std::vector<int>& counts, End end, Start start = MagicRing{}) {
    Piece piece;
    piece.start = start;
    piece.end = end;
    piece.area_stretch = unstuffed_stretch;
    for (const int count : counts) piece.rounds.emplace_back().working = WorkedEvenly{count};
    return piece;
}

ShapeProblem problem_of(const Piece& piece) { return shape_problem(piece, piece_graph(piece).graph, gauge); }

Shape shape_of(const Piece& piece) { return solve_shape(problem_of(piece)); }

Shape stuffed(Piece piece, double stretch = light_stuffing_stretch) {
    piece.area_stretch = stretch;
    return shape_of(piece);
}

const std::vector<int> ball{6, 12, 18, 24, 30, 30, 30, 30, 30, 30, 24, 18, 12, 6};
const std::vector<int> ear{6, 12, 18, 24, 24, 24, 24, 24};

// A bag of nothing but its fabric: as thick as two layers of it, and of their volume.
TEST(FlatLayers, ABallWithoutStuffingIsAFlatBag) {
    const Piece piece = piece_of(ball, End::drawn_closed);
    const Shape flat = shape_of(piece);
    const Shape light = stuffed(piece);
    ASSERT_EQ(flat.termination, Termination::converged);
    const double two_layers_mm = 2 * fabric_thickness_in_stitches * stitch_mm;
    EXPECT_NEAR(flat.depth_mm, two_layers_mm, 1e-9);
    // Between the middles of its layers.
    EXPECT_NEAR(flat.volume_mm3, flat.surface_mm2 / 2 * two_layers_mm / 2, 0.05 * flat.volume_mm3);
    EXPECT_LT(flat.volume_mm3, 0.5 * light.volume_mm3);
    EXPECT_LT(flat.depth_mm, 0.2 * light.depth_mm);
}

// N stitches around a tube are N w / 2 across when it is pressed flat, and every round is as high as it was.
TEST(FlatLayers, ATubeIsHalfItsLoopsWide) {
    const Shape flat = shape_of(piece_of(std::vector<int>(12, 16), End::left_open, OpenTube{16}));
    ASSERT_TRUE(flat.flattened());
    EXPECT_NEAR(flat.width_mm, 16 * stitch_mm / 2, 1e-6);
    EXPECT_NEAR(flat.height_mm, 12 * stitch_mm, 1e-6);
    for (const LoopSection& section : flat.sections) EXPECT_NEAR(section.bend, 0, 1e-6);
    for (const double stretch : flat.wale_stretch) EXPECT_NEAR(stretch, 0, 1e-9);
}

// The two layers of a cone of growth g are the sectors of angle pi g that it unrolls to: no stitch is out.
TEST(FlatLayers, AConeFoldsToTheSectorsThatItUnrollsTo) {
    for (const int more : {2, 3, 4, 5, 6}) {
        std::vector<int> counts;
        for (int i = 1; i <= 10; ++i) counts.push_back(more * i);
        ShapeProblem problem = problem_of(piece_of(counts, End::left_open));
        problem.limp = true;
        const Shape flat = solve_shape(problem);
        ASSERT_EQ(flat.termination, Termination::converged);
        const double angle = more * stitch_mm / (2 * stitch_mm);  // pi g, with g = more w / (2 pi h)
        for (std::size_t i = 1; i < flat.sections.size(); ++i)
            EXPECT_NEAR(flat.sections[i].bend, angle, 1e-5);
        for (const double stretch : flat.wale_stretch) EXPECT_NEAR(stretch, 0, 1e-6);
        const double slant = 10 * stitch_mm;
        EXPECT_NEAR(flat.surface_mm2, angle * slant * slant, 0.02 * flat.surface_mm2);
    }
}

// A worked ear: rounded at its tip, half its loop wide, and no longer than its rounds.
TEST(FlatLayers, AnEarSewnStraightIsFlatToItsSeam) {
    const Shape flat = shape_of(piece_of(ear, End::sewn_straight));
    ASSERT_TRUE(flat.flattened());
    EXPECT_NEAR(flat.sections.back().half_width_mm, 24 * stitch_mm / 4, 1e-9);
    EXPECT_EQ(flat.sections.back().bend, 0);
    EXPECT_GT(flat.sections[2].bend, 0.5);
    EXPECT_LT(flat.height_mm, 8 * stitch_mm);
    EXPECT_GT(flat.height_mm, 6 * stitch_mm);
    EXPECT_NEAR(flat.depth_mm, 2 * fabric_thickness_in_stitches * stitch_mm, 1e-9);
    EXPECT_LT(flat.depth_mm, stuffed(piece_of(ear, End::sewn_straight)).depth_mm / 3);
}

TEST(FlatLayers, AnOvalLiesOnBothSidesOfItsChain) {
    const Shape flat = shape_of(piece_of(std::vector<int>(10, 20), End::left_open, OvalChain{10}));
    ASSERT_TRUE(flat.flattened());
    EXPECT_NEAR(flat.width_mm, 10 * stitch_mm, 1e-6);
    EXPECT_NEAR(flat.height_mm, 10 * stitch_mm, 1e-6);
    EXPECT_FALSE(
        problem_of(piece_of(std::vector<int>(10, 20), End::left_open, OvalChain{10})).equivalent_round);
}

// Two discs joined at their rims are as wide as a disc, which is as wide as its six rounds are high, and two
// layers thick.
TEST(FlatLayers, TwoDiscsLieOnEachOther) {
    const std::vector<int> lens{6, 12, 18, 24, 30, 36, 36, 30, 24, 18, 12, 6};
    const Piece piece = piece_of(lens, End::drawn_closed);
    const Shape flat = shape_of(piece);
    const Shape light = stuffed(piece);
    EXPECT_EQ(flat.termination, Termination::converged);
    EXPECT_NEAR(flat.width_mm, 12 * stitch_mm, 1e-9);
    EXPECT_NEAR(flat.height_mm, 2 * fabric_thickness_in_stitches * stitch_mm, 1e-9);
    EXPECT_LT(flat.height_mm, 0.2 * light.height_mm);
    EXPECT_LT(flat.volume_mm3, 0.2 * light.volume_mm3);
    EXPECT_TRUE(std::ranges::is_sorted(flat.z_mm));
    const Shape again = solve_shape(problem_of(piece), {}, &light);
    EXPECT_EQ(again.z_mm, flat.z_mm);
    Piece lightly = piece;
    lightly.area_stretch = light_stuffing_stretch;
    EXPECT_NEAR(solve_shape(problem_of(lightly), {}, &flat).height_mm, light.height_mm, 1e-4);
}

// Common practice: ears, legs, pouches and whole bodies flop; mats, cones, bowls and low baskets keep their
// form.
TEST(FlatLayers, WhatStandsByItselfIsNotFlattened) {
    const std::vector<int> disc{6, 12, 18, 24, 30, 36};
    const std::vector<int> cone{4, 8, 12, 16, 20, 24};
    const std::vector<int> slim_cone{3, 5, 7, 9, 11, 13, 15, 17};
    std::vector<int> basket = disc;
    basket.insert(basket.end(), 3, 36);
    std::vector<int> lens = disc;
    lens.insert(lens.end(), {36, 30, 24, 18, 12, 6});
    for (const auto& stands : {disc, cone, slim_cone, basket})
        EXPECT_FALSE(problem_of(piece_of(stands, End::left_open)).limp) << stands.size();
    EXPECT_FALSE(problem_of(piece_of(lens, End::drawn_closed)).limp);
    EXPECT_TRUE(problem_of(piece_of(lens, End::drawn_closed)).on_its_face);
    EXPECT_FALSE(problem_of(piece_of({24, 24}, End::left_open, OpenTube{24})).limp);
    EXPECT_TRUE(problem_of(piece_of(ear, End::left_open)).limp);
    EXPECT_TRUE(problem_of(piece_of(ball, End::drawn_closed)).limp);
    EXPECT_TRUE(problem_of(piece_of(cone, End::sewn_straight)).limp);
    EXPECT_TRUE(problem_of(piece_of({8, 10, 12, 14, 16, 16, 16, 16}, End::left_open, OpenTube{8})).limp);
    Piece full = piece_of(ball, End::drawn_closed);
    full.area_stretch = light_stuffing_stretch;
    EXPECT_FALSE(problem_of(full).limp);
    Piece rows = piece_of({12, 12, 12, 12, 12, 12}, End::sewn_straight);
    rows.joining = Joining::rows;
    EXPECT_FALSE(problem_of(rows).limp);
    EXPECT_FALSE(problem_of(rows).sewn_straight);
}

bool all_finite(const Shape& shape) {
    const auto finite = [](double value) { return std::isfinite(value); };
    return std::ranges::all_of(shape.radius_mm, finite) && std::ranges::all_of(shape.z_mm, finite) &&
           std::ranges::all_of(shape.wale_stretch, finite) && finite(shape.width_mm) &&
           finite(shape.height_mm) && finite(shape.depth_mm) && finite(shape.volume_mm3);
}

// Whatever can be worked lies flat in two layers, each half of its loops long, and never holds more than when
// it is lightly stuffed.
TEST(FlatLayers, OfRandomTablesHoldLessThanLightStuffing) {
    int flat_ones = 0;
    for (int number = 1; number <= testing::random_cases(20'000); ++number) {
        std::mt19937 random(static_cast<unsigned>(number));
        ShapeProblem problem = random_table(random);
        problem.area_stretch = light_stuffing_stretch;
        problem.sewn_straight = problem.last == MeridianEnd::open && random() % 2 == 0;
        const Shape light = solve_shape(problem);
        problem.area_stretch = unstuffed_stretch;
        problem.limp = lies_limp(problem);
        problem.on_its_face = lies_on_its_face(problem);
        const Shape flat = solve_shape(problem);
        ASSERT_NE(flat.termination, Termination::unusable_problem) << number;
        ASSERT_TRUE(all_finite(flat)) << number;
        // Three rounds are hardly larger than their fabric is thick.
        const bool stub = problem.rest_height_mm.size() < 4;
        if (!stub && light.termination == Termination::converged &&
            flat.termination == Termination::converged) {
            // Of a disc sewn straight the stuffed shape is rough; a base that lies flat is pulled wide.
            const bool is_rough = problem.sewn_straight || (can_lie_flat(problem) && !problem.limp);
            const double share = is_rough ? 1.25 : 1.0001;
            ASSERT_LE(flat.volume_mm3, light.volume_mm3 * share) << number;
        }
        if (!problem.limp) continue;
        ++flat_ones;
        ASSERT_EQ(flat.termination, Termination::converged) << number;
        for (std::size_t i = 0; i < flat.sections.size(); ++i) {
            const double loop = 2 * pi * flat.radius_mm[i];
            ASSERT_NEAR(2 * flat.sections[i].half_width_mm, loop / 2, 1e-9) << number;
            ASSERT_LE(loop, problem.rest_loop_mm[i] * (1 + 1e-9)) << number;
            ASSERT_LE(2 * flat.sections[i].reach_mm(), loop / 2 + 1e-9) << number;
        }
        ASSERT_NEAR(flat.depth_mm, 2 * fabric_thickness_mm(problem), 1e-9) << number;
    }
    EXPECT_GT(flat_ones, 0);
}

// Toys as they are made: no loop is gathered, so each layer is just half of its loop, and the bag is lower
// and thinner than the stuffed piece has room for.
TEST(FlatLayers, OfToysTakeTheirWholeLoops) {
    for (int number = 1; number <= testing::random_cases(3'000); ++number) {
        std::mt19937 random(static_cast<unsigned>(number));
        const std::vector<int> counts = random_toy_counts(random);
        const Piece piece = piece_of(counts, End::drawn_closed);
        const ShapeProblem problem = problem_of(piece);
        const Shape flat = solve_shape(problem);
        if (!flat.flattened()) continue;
        for (std::size_t i = 1; i < flat.sections.size(); ++i)
            ASSERT_NEAR(2 * flat.sections[i].half_width_mm, counts[i - 1] * stitch_mm / 2,
                        0.25 * counts[i - 1] * stitch_mm / 2)
                << number;
        for (const double stretch : flat.wale_stretch) ASSERT_GT(stretch, -0.6) << number;
    }
}

// Scaled alike, it is the same piece.
TEST(FlatLayers, ScaleWithTheStitch) {
    const Piece piece = piece_of(ear, End::sewn_straight);
    const Shape one = shape_of(piece);
    const Shape twice =
        solve_shape(shape_problem(piece, piece_graph(piece).graph, {2 * stitch_mm, 2 * stitch_mm, 0, 0}));
    EXPECT_NEAR(twice.width_mm, 2 * one.width_mm, 1e-6);
    EXPECT_NEAR(twice.height_mm, 2 * one.height_mm, 1e-5);
    EXPECT_NEAR(twice.volume_mm3, 8 * one.volume_mm3, 1e-3);
}

}  // namespace
}  // namespace roundwright::test
