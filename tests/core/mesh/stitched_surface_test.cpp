#include "core/mesh/stitched_surface.h"

#include <algorithm>
#include <gtest/gtest.h>

#include "core/face/fabric_face.h"
#include "core/mesh/fabric_surface.h"
#include "core/rounds/piece_graph.h"
#include "core/shape/fabric/cells_start.h"
#include "core/shape/fabric/measure_stitches.h"
#include "core/shape/measure_shape.h"
#include "tests/core/checks/checked_piece.h"
#include "tests/core/language/pattern/random_piece.h"
#include "tests/core/mesh/mesh_measures.h"
#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

/// A piece with its nodes where they start.
struct Laid {
    Toy toy;
    StitchGraph graph;
    SolvedStitches stitches;
    Shape round;

    [[nodiscard]] StitchedSurface geometry() const { return {stitches, false}; }
    [[nodiscard]] StitchSurface surface(Relief relief, std::size_t most_triangles = 200'000) const {
        return fabric_surface(toy, graph, stitches.cells.rounds, geometry(), {5, relief, most_triangles});
    }
};

Laid laid(const Toy& toy, bool revolved = true) {
    Laid laid;
    laid.toy = toy;
    laid.toy.yarns.resize(4);
    const Gauge gauge{5, 5, 0, 0};
    const Piece& piece = toy.pieces[0];
    laid.graph = piece_graph(piece).graph;
    laid.stitches.cells = stitch_cells(piece, laid.graph, gauge);
    if (!laid.stitches.cells.usable()) return laid;
    laid.round = solve_shape(shape_problem(piece, laid.graph, gauge));
    laid.stitches.shape.nodes =
        revolved ? revolved_start(laid.stitches.cells, laid.round) : scaled_start(laid.stitches.cells);
    laid.stitches.shape.termination = Termination::converged;
    return laid;
}

Toy toy_with(Joining joining, End end, const Start& start = MagicRing{}, std::vector<int> counts = ball(5)) {
    Toy toy = stuffed_toy_of(counts);
    toy.pieces[0].joining = joining;
    toy.pieces[0].end = end;
    toy.pieces[0].start = start;
    return toy;
}

long expected_euler(const StitchCells& cells) {
    if (cells.closed() || cells.rows) return 2;  // a sheet's two skins and their rim are one sphere
    const bool open_below = !cells.pole_below && !cells.around_chain;
    const bool open_above = !cells.pole_above && !cells.sewn;
    return open_below && open_above ? 0 : 2;
}

void expect_watertight(const Laid& laid) {
    for (const Relief relief : {Relief::none, Relief::solid, Relief::shaded}) {
        const Mesh mesh = laid.surface(relief).mesh;
        const MeshMeasures found = measure(mesh);
        EXPECT_TRUE(found.finite);
        EXPECT_EQ(found.odd_edges, 0U);
        EXPECT_EQ(found.euler_characteristic, expected_euler(laid.stitches.cells));
        EXPECT_LE(mesh.triangle_count(),
                  fabric_triangles(laid.stitches.cells.rounds, laid.geometry(), {5, relief, 200'000}));
    }
}

TEST(StitchedSurface, IsWatertightHoweverRoundsEnd) {
    for (const Joining joining : {Joining::joined, Joining::spiral, Joining::rows})
        for (const End end : {End::drawn_closed, End::left_open, End::sewn_straight})
            for (const Start& start : {Start{MagicRing{}}, Start{ChainRing{6}}, Start{OpenTube{6}}}) {
                SCOPED_TRACE(::testing::Message()
                             << static_cast<int>(joining) << static_cast<int>(end) << start.index());
                const bool rows = joining == Joining::rows;
                expect_watertight(laid(toy_with(joining, end, start), !rows));
            }
    expect_watertight(
        laid(toy_with(Joining::joined, End::drawn_closed, OvalChain{6}, {18, 24, 24, 18}), false));
    expect_watertight(laid(toy_with(Joining::spiral, End::left_open, OvalChain{6}, {18, 24, 24, 18}), false));
}

TEST(StitchedSurface, HoldsTheVolumeOfItsCells) {
    for (const Joining joining : {Joining::joined, Joining::spiral}) {
        const Laid ball = laid(toy_with(joining, End::drawn_closed));
        const double cells = enclosed_mm3(ball.stitches.cells, ball.stitches.shape.nodes);
        EXPECT_NEAR(cells / ball.round.volume_mm3, 1, joining == Joining::joined ? 0.01 : 0.03);
        EXPECT_NEAR(measure(ball.surface(Relief::none).mesh).volume_mm3 / ball.round.volume_mm3, 1, 0.03);
    }
}

TEST(StitchedSurface, ARevolvedShapeMeasuresAsItDoesInTheRound) {
    const Laid ball = laid(toy_with(Joining::joined, End::drawn_closed));
    const PieceMeasures nodes = measure_stitches(ball.stitches);
    EXPECT_NEAR(nodes.width_mm / ball.round.width_mm, 1, 1e-3);
    EXPECT_NEAR(nodes.depth_mm / ball.round.width_mm, 1, 1e-3);
    EXPECT_NEAR(nodes.height_mm, ball.round.height_mm, 1e-6);
    EXPECT_NEAR(nodes.surface_mm2 / ball.round.surface_mm2, 1, 0.02);
    ASSERT_EQ(nodes.loops.size(), ball.round.radius_mm.size());
    for (std::size_t i = 1; i < nodes.loops.size(); ++i) {
        EXPECT_NEAR(nodes.loops[i].radius_mm, ball.round.radius_mm[i], 0.003 * ball.round.radius_mm[i]) << i;
        EXPECT_NEAR(nodes.loops[i].height_mm, ball.round.z_mm[i], 1e-6) << i;
        EXPECT_NEAR(nodes.loops[i].course_stretch, ball.round.course_stretch[i], 0.003) << i;
        EXPECT_NEAR(nodes.loops[i].width_mm, 2 * ball.round.radius_mm[i], 0.02 * ball.round.radius_mm[i])
            << i;
        EXPECT_NEAR(nodes.loops[i].wale_stretch, ball.round.wale_stretch[i - 1], 0.1) << i;
    }
}

TEST(StitchedSurface, PatchesOfASpiralClimbByOneRoundATurn) {
    const Laid tube = laid(toy_with(Joining::spiral, End::left_open, OpenTube{24}, std::vector<int>(9, 24)));
    ASSERT_TRUE(tube.stitches.cells.spiral);
    const StitchSurface surface = tube.surface(Relief::none);
    const auto height = [&](std::size_t stitch) {
        double sum = 0;
        for (const Vec3& corner : surface.stitches[stitch].corners) sum += corner.y() / 4;
        return sum;
    };
    const double rise = height(24 * 5) - height(24 * 4);
    EXPECT_NEAR(height(24 * 5) - height(24 * 5 - 1), rise / 24, rise / 24) << "no step within the rounds";
    EXPECT_NEAR(height(24 * 5 - 1) - height(24 * 4), rise * 23 / 24, rise / 24);
}

TEST(StitchedSurface, FeaturesFindTheirPlaceOnIt) {
    const Laid ball = laid(toy_with(Joining::spiral, End::drawn_closed));
    const FabricFace face(ball.toy.pieces[0], std::make_shared<StitchedSurface>(ball.geometry()));
    const SurfacePoint middle = face.at({face.along_of_loops()[8], 0});
    EXPECT_NEAR(middle.point.x(), 0, 1.5);
    EXPECT_GT(middle.point.z(), 0.8 * ball.round.width_mm / 2);
    EXPECT_GT(middle.normal.z(), 0.9);
    const SurfacePlace found = face.nearest(middle.point);
    EXPECT_NEAR(found.along_mm, face.along_of_loops()[8], 0.1);
}

TEST(StitchedSurface, LargePiecesGetLargerCells) {
    for (const Joining joining : {Joining::joined, Joining::spiral}) {
        const Laid large = laid(toy_with(joining, End::drawn_closed, MagicRing{}, ball(14)));
        const StitchSurface surface = large.surface(Relief::shaded, 3'000);
        EXPECT_LE(surface.mesh.triangle_count(), 3'000U);
        const MeshMeasures found = measure(surface.mesh);
        EXPECT_EQ(found.odd_edges, 0U);
        EXPECT_EQ(found.euler_characteristic, 2);
        EXPECT_NEAR(found.volume_mm3 / large.round.volume_mm3, 1, 0.06);
    }
}

TEST(StitchedSurface, WhateverTheLanguageSaysIsWatertight) {
    for (int number = 0; number < testing::random_cases(100); ++number) {
        SCOPED_TRACE(number);
        testing::RandomPiece random(static_cast<unsigned>(number) + 7000);
        Toy toy;
        toy.pieces.push_back(random.piece());
        const Laid piece = laid(toy, false);
        if (!piece.stitches.cells.usable()) continue;
        const MeshMeasures found = measure(piece.surface(Relief::none).mesh);
        EXPECT_TRUE(found.finite);
        EXPECT_EQ(found.odd_edges, 0U);
        EXPECT_EQ(found.euler_characteristic, expected_euler(piece.stitches.cells));
    }
}

}  // namespace
}  // namespace roundwright::test
