#include "core/shape/curled_strip.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/rounds/piece_graph.h"

namespace roundwright {
namespace {

using std::numbers::pi;

// By hand, with stitches 5 mm wide and rows 5 mm high, on a chain of 30: the inner edge is 150 mm long.
// k = 2: r = 5 / 1 = 5, 150 / (2 pi 5) = 4.775 turns; k = 3: r = 2.5, 9.549 turns; k = 4: r = 5 / 3, 14.324.
TEST(CurledStrip, HasTheRadiusHOverKLessOne) {
    for (const auto& [k, radius, turns] :
         {std::tuple{2, 5.0, 4.774648}, std::tuple{3, 2.5, 9.549297}, std::tuple{4, 5.0 / 3, 14.323945}}) {
        const auto strip = curled_strip(150, k * 150, 5, 2);
        ASSERT_TRUE(strip);
        EXPECT_NEAR(strip->stitches_a_chain, k, 1e-12);
        EXPECT_NEAR(strip->inner_radius_mm, radius, 1e-12);
        EXPECT_NEAR(strip->outer_radius_mm, radius + 5, 1e-12);
        EXPECT_NEAR(strip->turns, turns, 1e-6);
        EXPECT_NEAR(strip->length_mm, 2 * turns, 2e-6);
    }
}

TEST(CurledStrip, BothItsEdgesGoAroundAsOften) {
    const auto strip = curled_strip(24 * 4.2, 3 * 24 * 4.2, 4.5, 2);
    ASSERT_TRUE(strip);
    EXPECT_NEAR(strip->outer_mm / (2 * pi * strip->outer_radius_mm), strip->turns, 1e-12);
}

TEST(CurledStrip, OneStitchAChainLiesStraight) {
    EXPECT_FALSE(curled_strip(100, 100, 5, 2));
    EXPECT_FALSE(curled_strip(100, 50, 5, 2));
    EXPECT_FALSE(curled_strip(0, 300, 5, 2));
    EXPECT_FALSE(curled_strip(100, 300, 0, 2));
}

/// The tail of a chain of 20 with so many stitches in each, in one row of a kind.
Piece tail_of(int stitches, StitchKind kind = StitchKind::single_crochet) {
    Piece tail;
    tail.start = OpenTube{20};
    tail.joining = Joining::rows;
    tail.rounds = {{.working = WorkedEvenly{.stitches = stitches, .kind = kind}, .note = {}}};
    return tail;
}

std::optional<CurledStrip> strip_of(const Piece& piece, const Gauge& gauge) {
    return curled_strip(piece, shape_problem(piece, piece_graph(piece).graph, gauge), 2);
}

TEST(CurledStrip, IsFoundInAPieceWorkedInRowsOnAChain) {
    const Gauge gauge{5, 4, 0, 0, 0};
    const auto strip = strip_of(tail_of(60), gauge);
    ASSERT_TRUE(strip);
    EXPECT_NEAR(strip->inner_radius_mm, 4.0 / 2, 1e-12);
    EXPECT_NEAR(strip->stitches_a_chain, 3, 1e-12);
    // Half doubles are half as high again, and their coil as much wider.
    EXPECT_NEAR(strip_of(tail_of(60, StitchKind::half_double_crochet), gauge)->inner_radius_mm, 1.5 * 4.0 / 2,
                1e-12);
    EXPECT_FALSE(strip_of(tail_of(20), gauge));
    Piece round = tail_of(60);
    round.joining = Joining::spiral;
    EXPECT_FALSE(strip_of(round, gauge));
    Piece ring = tail_of(60);
    ring.start = ChainRing{20};
    EXPECT_FALSE(strip_of(ring, gauge));
}

TEST(CurledStrip, IsToldByItsCountsAlone) {
    EXPECT_TRUE(curls(tail_of(40), {40}));
    EXPECT_TRUE(curls(tail_of(30), {30, 40}));
    EXPECT_FALSE(curls(tail_of(39), {39}));
    EXPECT_FALSE(curls(tail_of(60), {}));
}

TEST(Coil, OfThinFabricIsThatOfThePlane) {
    const auto strip = curled_strip(150, 450, 5, 0);
    const Coil coil = coil_of(*strip, {5}, 0);
    EXPECT_NEAR(coil.inner_radius_mm, strip->inner_radius_mm, 1e-12);
    EXPECT_NEAR(coil.radians, 2 * pi * strip->turns, 1e-9);
    EXPECT_EQ(coil.length_mm(), 0);
}

TEST(Coil, KeepsTheLengthsOfBothEdgesAndTheHeightBetweenThem) {
    for (const double k : {2.0, 3.0, 4.0})
        for (const double fabric : {1.0, 2.0, 3.0}) {
            const auto strip = curled_strip(150, k * 150, 5, fabric);
            const Coil coil = coil_of(*strip, {2, 3}, fabric);
            EXPECT_NEAR(coil.edge_mm(0), 150, 1e-9) << k << ' ' << fabric;
            EXPECT_NEAR(coil.edge_mm(2), k * 150, 1e-9) << k << ' ' << fabric;
            EXPECT_NEAR(coil.radii_mm[1] - coil.radii_mm[0], 2, 1e-12);
            EXPECT_NEAR(coil.outer_radius_mm() - coil.inner_radius_mm, 5, 1e-12);
            // Its turns lie on each other, and the plane's radius is near.
            EXPECT_NEAR(2 * pi * coil.climb_mm, fabric, 1e-12);
            EXPECT_NEAR(coil.inner_radius_mm, strip->inner_radius_mm, 0.11 * strip->inner_radius_mm);
            EXPECT_NEAR(coil.length_mm(), strip->length_mm, 0.11 * strip->length_mm);
        }
}

TEST(Coil, OfFabricThickerThanItCanBeIsPressedTogether) {
    const auto strip = curled_strip(150, 6 * 150, 5, 60);
    const Coil coil = coil_of(*strip, {5}, 60);
    EXPECT_TRUE(std::isfinite(coil.inner_radius_mm) && coil.inner_radius_mm > 0);
    EXPECT_NEAR(coil.edge_mm(0), 150, 1e-9);
    EXPECT_NEAR(coil.edge_mm(1), 6 * 150, 1e-6);
    EXPECT_LT(2 * pi * coil.climb_mm, 60);
}

TEST(Coil, IsMeasuredByItsBox) {
    const Piece tail = tail_of(60);
    const Gauge gauge{5, 5, 0, 0, 0};
    const ShapeProblem problem = shape_problem(tail, piece_graph(tail).graph, gauge);
    const auto coil = coil_of(tail, problem, 2);
    ASSERT_TRUE(coil);
    const PieceMeasures measures = coil_measures(*coil, problem);
    EXPECT_TRUE(measures.converged());
    EXPECT_NEAR(measures.width_mm, 2 * coil->outer_radius_mm(), 1e-3);
    EXPECT_NEAR(measures.depth_mm, 2 * coil->outer_radius_mm(), 1e-3);
    EXPECT_NEAR(measures.height_mm, coil->length_mm(), 1e-12);
    EXPECT_EQ(measures.volume_mm3, 0);
    // Between edges of 100 and 300 mm, 5 mm apart: that of the ring's part, 5 (100 + 300) / 2.
    EXPECT_NEAR(measures.surface_mm2, 1000, 5);
    ASSERT_EQ(measures.loops.size(), 2U);
    EXPECT_NEAR(measures.loops[0].course_stretch, 0, 1e-12);
    EXPECT_NEAR(measures.loops[1].course_stretch, 0, 1e-12);
}

TEST(Coil, HasARangeOfSizesThatHoldsItsOwn) {
    const Piece tail = tail_of(60);
    const Gauge gauge{5, 5, 0.5, 0.5, 0.5};
    const ShapeProblem problem = shape_problem(tail, piece_graph(tail).graph, gauge);
    const PieceMeasures measures = coil_measures(*coil_of(tail, problem, 2), problem);
    const SizeRange range = coil_size_range(tail, problem, gauge, 2);
    EXPECT_LT(range.width_mm.low, measures.width_mm - 0.3);
    EXPECT_GT(range.width_mm.high, measures.width_mm + 0.3);
    EXPECT_LT(range.height_mm.low, measures.height_mm);
    EXPECT_GT(range.height_mm.high, measures.height_mm);
}

}  // namespace
}  // namespace roundwright
