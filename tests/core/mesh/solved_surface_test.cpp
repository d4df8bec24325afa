#include <algorithm>
#include <gtest/gtest.h>
#include <numbers>
#include <random>

#include "core/mesh/revolve.h"
#include "core/rounds/piece_graph.h"
#include "core/shape/lie.h"
#include "core/shape/solve_shape.h"
#include "tests/core/mesh/example_pieces.h"
#include "tests/core/mesh/mesh_measures.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

struct Solved {
    Toy toy;
    Shape shape;
    StitchSurface surface;
};

/// From counts to the surface, as the program does it.
Solved solved(const std::vector<int>& counts, Start start, End end, double stretch,
              const RevolveOptions& options = {}) {
    Solved found;
    Piece piece;
    piece.start = start;
    piece.end = end;
    piece.area_stretch = stretch;
    for (const int count : counts) piece.rounds.emplace_back().working = WorkedEvenly{count};
    const auto graph = piece_graph(piece).graph;
    const auto problem = shape_problem(piece, graph, {5, 5, 0, 0});
    found.shape = solve_shape(problem);
    std::vector<int> waves;
    std::vector<double> heights;
    for (const auto& lie : lie_of_rounds(problem, found.shape)) {
        waves.push_back(lie.waves);
        heights.push_back(lie.wave_height_mm);
    }
    found.surface = revolve(found.toy, piece, graph, found.shape, waves, heights, options);
    return found;
}

TEST(SolvedSurface, ClosedPiecesHoldTheSolversVolume) {
    const std::vector<std::vector<int>> pieces = {
        {6, 12, 18, 24, 24, 24, 24, 18, 12, 6},
        {6, 12, 18, 24, 30, 36, 36, 36, 30, 24, 18, 18, 18, 24, 24, 18, 12, 6},
        {6, 6, 6, 6},
        {8, 16, 16, 16, 16, 16, 16, 16, 8},
    };
    for (const auto& counts : pieces) {
        for (const double stretch : {0.01, 0.04, 0.08}) {
            const auto found = solved(counts, MagicRing{}, End::drawn_closed, stretch);
            const auto mesh = test::measure(found.surface.mesh);
            EXPECT_EQ(mesh.odd_edges, 0U);
            EXPECT_EQ(mesh.euler_characteristic, 2);
            EXPECT_NEAR(mesh.total_curvature, 4 * std::numbers::pi, 1e-6);
            EXPECT_NEAR(mesh.volume_mm3 / found.shape.volume_mm3, 1, 0.01) << counts.size() << " rounds";
        }
    }
}

TEST(SolvedSurface, RandomClosedPiecesHoldTheSolversVolume) {
    std::mt19937 random(5);
    for (int k = 0; k < testing::random_cases(100); ++k) {
        const auto counts = test::random_counts(random, 40);
        RevolveOptions options;
        options.most_triangles = 60'000;
        const auto found = solved(counts, MagicRing{}, End::drawn_closed, 0.04, options);
        const auto mesh = test::measure(found.surface.mesh);
        ASSERT_EQ(mesh.odd_edges, 0U) << k;
        ASSERT_EQ(mesh.euler_characteristic, 2) << k;
        ASSERT_TRUE(mesh.finite && mesh.unit_normals) << k;
        // The relief of a knot of one or two rounds, or of a cord of a few stitches, is as large as they are.
        const bool small = counts.size() <= 2 || *std::ranges::max_element(counts) <= 6;
        ASSERT_NEAR(mesh.volume_mm3 / found.shape.volume_mm3, 1, small ? 0.02 : 0.01) << k;
    }
}

TEST(SolvedSurface, EveryStartAndEndIsSound) {
    const std::vector<int> counts = {12, 18, 24, 24, 18};
    for (const Start& start :
         {Start{MagicRing{}}, Start{ChainRing{4}}, Start{OpenTube{12}}, Start{OvalChain{5}}}) {
        for (const End end : {End::drawn_closed, End::left_open}) {
            const auto found = solved(counts, start, end, 0.04);
            const auto mesh = test::measure(found.surface.mesh);
            const bool hole_below =
                std::holds_alternative<ChainRing>(start) || std::holds_alternative<OpenTube>(start);
            EXPECT_EQ(mesh.odd_edges, 0U) << start.index();
            EXPECT_EQ(mesh.euler_characteristic, hole_below && end == End::left_open ? 0 : 2)
                << start.index();
            EXPECT_GT(mesh.volume_mm3, 0);
        }
    }
}

}  // namespace
}  // namespace roundwright
