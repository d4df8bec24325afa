#include "core/shape/fabric/stitch_cells.h"

#include <gtest/gtest.h>
#include <numeric>
#include <set>
#include <tuple>

#include "core/rounds/piece_graph.h"
#include "core/stitches/stitch_measure.h"
#include "tests/core/checks/checked_piece.h"
#include "tests/core/language/pattern/random_piece.h"
#include "tests/core/shape/fabric/cell_mesh.h"
#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

constexpr double w = 5, h = 4;
const Gauge gauge{w, h, 0, 0};

StitchCells cells_of(const Piece& piece) { return stitch_cells(piece, piece_graph(piece).graph, gauge); }

Piece piece_of(const std::vector<int>& counts, Joining joining = Joining::spiral, End end = End::drawn_closed,
               const Start& start = MagicRing{}) {
    Piece piece = stuffed_toy_of(counts).pieces[0];
    piece.joining = joining;
    piece.end = end;
    piece.start = start;
    return piece;
}

Piece with_words(Piece piece, const std::vector<const char*>& rounds) {
    for (const char* words : rounds) piece.rounds.push_back({AsWritten{words}, 0, false, ""});
    return piece;
}

void expect_sound(const StitchCells& cells) {
    ASSERT_TRUE(cells.usable());
    const CellMesh mesh = mesh_of(cells);
    EXPECT_EQ(mesh.doubled, 0U);
    EXPECT_EQ(mesh.pinched, 0U);
    EXPECT_EQ(mesh.unused, 0U);
    EXPECT_EQ(mesh.turned, 0U);
    if (!cells.closed()) return;
    EXPECT_EQ(mesh.open, 0U);
    EXPECT_EQ(mesh.euler_characteristic, 2);
}

/// Feet cover each loop below once, and every edge is one line from its first loop to its last.
void expect_every_loop_used_once(const StitchCells& cells) {
    for (std::size_t i = 0; i < cells.rounds.size(); ++i) {
        double reached = 0;
        for (const LaidStitch& cell : cells.rounds[i].cells) {
            EXPECT_NEAR(cell.below_first, reached, 1e-6);
            EXPECT_GE(cell.below_last, cell.below_first);
            reached = cell.below_last;
        }
        EXPECT_NEAR(reached, cells.edges[i].loops, 1e-6);
        EXPECT_EQ(cells.edges[i + 1].loops, static_cast<double>(cells.rounds[i].cells.size()));
    }
    for (const CellEdge& edge : cells.edges) {
        EXPECT_EQ(edge.nodes.front().at, 0);
        EXPECT_EQ(edge.nodes.back().at, edge.loops);
        for (std::size_t k = 1; k < edge.nodes.size(); ++k) EXPECT_GT(edge.nodes[k].at, edge.nodes[k - 1].at);
    }
}

TEST(StitchCells, AStitchIsAsWideAsItsLoopsAndAsHighAsItsKind) {
    const Piece piece = piece_of({6, 12, 18, 18, 12, 9}, Joining::joined);
    const StitchCells cells = cells_of(piece);
    expect_sound(cells);
    for (std::size_t i = 0; i < cells.rounds.size(); ++i)
        for (std::size_t c = 0; c < cells.rounds[i].cells.size(); ++c) {
            const LaidStitch& cell = cells.rounds[i].cells[c];
            const double below = i == 0 ? 0 : (cell.below_last - cell.below_first) * w;
            EXPECT_NEAR(rest_area(cells, i, c), (below + w) / 2 * h, 1e-9) << i << ' ' << c;
        }
    const double fan = std::accumulate(cells.problem.triangles.end() - 9, cells.problem.triangles.end(), 0.0,
                                       [](double sum, const auto& t) { return sum + rest_area(t); });
    EXPECT_NEAR(fan, 9 * w * w / 4, 1e-9);
}

TEST(StitchCells, ASpiralHasTheSameFabricRoundByRound) {
    const std::vector<int> counts{6, 12, 18, 18, 12, 6};
    for (const End end : {End::drawn_closed, End::left_open, End::sewn_straight}) {
        const StitchCells joined = cells_of(piece_of(counts, Joining::joined, end));
        const StitchCells spiral = cells_of(piece_of(counts, Joining::spiral, end));
        expect_sound(joined);
        expect_sound(spiral);
        EXPECT_FALSE(joined.spiral);
        ASSERT_TRUE(spiral.spiral);
        for (std::size_t i = 0; i < counts.size(); ++i)
            EXPECT_NEAR(rest_area(spiral, i), rest_area(joined, i), 1e-9) << i;
    }
}

TEST(StitchCells, ASpiralEndsEveryRoundWhereTheNextOneBegins) {
    const StitchCells open = cells_of(piece_of({6, 12, 18, 18}, Joining::spiral, End::left_open));
    for (std::size_t e = 1; e + 1 < open.edges.size(); ++e)
        EXPECT_EQ(open.edges[e].nodes.back().node, open.edges[e + 1].nodes.front().node);
    EXPECT_NE(open.edges.back().nodes.back().node, open.edges.back().nodes.front().node);
    EXPECT_EQ(mesh_of(open).open, 19U) << "18 loops and the ledge";
    const StitchCells joined = cells_of(piece_of({6, 12, 18, 18}, Joining::joined, End::left_open));
    for (const CellEdge& edge : joined.edges) EXPECT_EQ(edge.nodes.front().node, edge.nodes.back().node);
}

TEST(StitchCells, ATubeAndARingAreOpenBelow) {
    for (const Start& start : {Start{OpenTube{12}}, Start{ChainRing{5}}})
        for (const Joining joining : {Joining::spiral, Joining::joined}) {
            const StitchCells cells = cells_of(piece_of({12, 12, 12}, joining, End::drawn_closed, start));
            expect_sound(cells);
            EXPECT_EQ(mesh_of(cells).open, 12U);
            EXPECT_EQ(mesh_of(cells).euler_characteristic, 1);
        }
    const StitchCells ring = cells_of(piece_of({12, 12}, Joining::joined, End::left_open, ChainRing{5}));
    EXPECT_NEAR(ring.edges[0].loops * ring.edges[0].loop_width_mm, 5 * w, 1e-9);
}

TEST(StitchCells, AnOvalFansOutAtTheEndsOfItsChain) {
    Piece piece = piece_of({}, Joining::joined, End::drawn_closed, OvalChain{8});
    piece =
        with_words(piece, {"4 sc in next st, sc 6, 4 sc in next st, 4 sc in next st, sc 6, 4 sc in next st",
                           "sc in each st around", "sc in each st around"});
    const StitchCells cells = cells_of(piece);
    expect_sound(cells);
    std::size_t fans = 0;
    for (const LaidStitch& cell : cells.rounds[0].cells) fans += cell.below_first == cell.below_last;
    EXPECT_EQ(fans, 12U) << "three at each corner of the chain";
    EXPECT_NEAR(rest_area(cells, 0), (16 + 28) * w / 2 * h, 1e-9);
    std::set<int> chain;
    for (const EdgeNode& node : cells.edges[0].nodes) chain.insert(node.node);
    EXPECT_EQ(chain.size(), 9U) << "both sides have one chain";
    // A magic ring is the chain of none.
    expect_sound(cells_of(piece_of({12, 18}, Joining::joined, End::drawn_closed, OvalChain{1})));
}

TEST(StitchCells, APartialRoundTapersAndLeavesItsLoops) {
    Piece piece = piece_of({12, 12}, Joining::joined, End::left_open, OpenTube{12});
    piece = with_words(piece,
                       {"starting in 4th st, sc in next 5, leave rem sts unworked", "sc in each st around"});
    const StitchCells cells = cells_of(piece);
    expect_sound(cells);
    EXPECT_NEAR(rest_area(cells, 2), (3 + 2 * 0.5) * w * h, 1e-9) << "two of five taper";
    EXPECT_EQ(mesh_of(cells).open, 24U);
    EXPECT_EQ(mesh_of(cells).euler_characteristic, 0);
    Piece lone = piece_of({12}, Joining::joined, End::left_open, OpenTube{12});
    lone = with_words(lone, {"starting in 4th st, sc, leave rem sts unworked", "sc in each st around"});
    expect_sound(cells_of(lone));
    EXPECT_NEAR(rest_area(cells_of(lone), 1), w * h / 2, 1e-9);
}

// A decrease beside loops that are left alone takes three nodes in line below, and one of them above.
TEST(StitchCells, ADecreaseMayTaper) {
    for (const char* words : {"starting in 4th st, dec, sc in next 8, dec, leave rem sts unworked",
                              "starting in 4th st, sc3tog, sc in next 8, sc3tog, leave rem sts unworked",
                              "starting in 4th st, dec, leave rem sts unworked"}) {
        SCOPED_TRACE(words);
        Piece piece = piece_of({30}, Joining::joined, End::left_open, OpenTube{30});
        piece = with_words(piece, {words, "sc in each st around"});
        const StitchCells cells = cells_of(piece);
        ASSERT_TRUE(cells.rounds[1].cells[0].carried);
        expect_sound(cells);
    }
}

TEST(StitchCells, ASeamJoinsFrontAndBackInPairs) {
    for (const int last : {12, 13, 8, 7}) {
        const StitchCells cells = cells_of(piece_of({6, 12, last}, Joining::joined, End::sewn_straight));
        expect_sound(cells);
        std::set<int> seam;
        for (const EdgeNode& node : cells.edges.back().nodes) seam.insert(node.node);
        EXPECT_EQ(seam.size(), static_cast<std::size_t>((last + 1) / 2 + 1)) << last;
    }
}

// Loops that the last round leaves alone bring the places of the round below to the seam, and the seam brings
// them to the other side.
TEST(StitchCells, ASeamOverLoopsThatAreLeftAloneIsSound) {
    Piece piece = piece_of({16, 16}, Joining::joined, End::sewn_straight);
    piece = with_words(piece, {"starting in 4th st, sc in next 2, leave rem sts unworked",
                               "starting in 7th st, (2 sc in next st) x 2, leave rem sts unworked"});
    const StitchCells cells = cells_of(piece);
    if (cells.usable()) expect_sound(cells);
    testing::RandomPiece random(2324);
    EXPECT_NO_THROW(std::ignore = cells_of(random.piece()));
}

TEST(StitchCells, RowsAreASheet) {
    const StitchCells cells =
        cells_of(piece_of({10, 10, 12, 10}, Joining::rows, End::left_open, OpenTube{10}));
    expect_sound(cells);
    EXPECT_EQ(mesh_of(cells).euler_characteristic, 1);
    EXPECT_EQ(cells.problem.area_stretch, 0);
}

// Its first edge lies double along the chain; where the rows are turned it is open.
TEST(StitchCells, RowsAroundAChainAreASheetFoldedAboutItsEnd) {
    Piece piece = piece_of({}, Joining::rows, End::left_open, OvalChain{8});
    piece = with_words(piece, {"sc 7, 3 sc in next st, 2 sc in next st, sc 7", "sc 8, inc x 3, sc 8"});
    const StitchCells cells = cells_of(piece);
    expect_sound(cells);
    EXPECT_EQ(mesh_of(cells).euler_characteristic, 1);
    const auto& chain = cells.edges.front().nodes;
    EXPECT_EQ(chain.front().node, chain.back().node);
    EXPECT_EQ(cells.rounds.front().cells[8].below_first, 8);
    EXPECT_EQ(cells.rounds.front().cells[8].below_last, 8) << "it stands on the end of the chain";
    EXPECT_NE(cells.edges[1].nodes.front().node, cells.edges[1].nodes.back().node);
}

// By as much as it leans, and with no more fabric.
TEST(StitchCells, ASlantMovesColumnsAndKeepsTheFabric) {
    const Piece piece = piece_of({6, 12, 18, 18, 12, 9}, Joining::joined);
    const StitchGraph graph = piece_graph(piece).graph;
    const StitchCells upright = stitch_cells(piece, graph, gauge, {}, 0);
    const StitchCells leaning = stitch_cells(piece, graph, gauge, {}, 0.5);
    EXPECT_NEAR(upright.turns.back() - leaning.turns.back(), 0.5 * (2. / 12 + 2. / 18 + 1. / 6 + 1. / 9),
                1e-12);
    for (std::size_t i = 0; i < upright.rounds.size(); ++i)
        for (std::size_t c = 0; c < upright.rounds[i].cells.size(); ++c)
            EXPECT_NEAR(rest_area(leaning, i, c), rest_area(upright, i, c), 1e-9) << i << ' ' << c;
    EXPECT_EQ(stitch_cells(piece_of({10, 10}, Joining::rows, End::left_open, OpenTube{10}),
                           piece_graph(piece_of({10, 10}, Joining::rows, End::left_open, OpenTube{10})).graph,
                           gauge, {}, 0.5)
                  .slant_stitches,
              0);
}

TEST(StitchCells, WhatIsWorkedIntoOneLoopFoldsAlongIt) {
    Piece piece = piece_of({6, 12}, Joining::joined);
    piece = with_words(piece, {"sc in each st around", "BLO sc in each st around"});
    const StitchCells cells = cells_of(piece);
    ASSERT_TRUE(cells.usable());
    std::set<std::int32_t> ridge;
    for (const EdgeNode& node : cells.edges[3].nodes) ridge.insert(node.node);
    EXPECT_EQ(cells.problem.creases.size(), 12U);
    for (const auto& [from, to] : cells.problem.creases) {
        EXPECT_LT(from, to);
        EXPECT_TRUE(ridge.contains(from) && ridge.contains(to));
    }
}

TEST(StitchCells, TallerStitchesSlopeToTheirNeighbours) {
    Piece piece = piece_of({12}, Joining::joined, End::left_open);
    piece = with_words(piece, {"sc 6, dc 6", "sc 4, ch 2, skip next 2 sts, sc 6"});
    const StitchCells cells = cells_of(piece);
    expect_sound(cells);
    EXPECT_NEAR(rest_area(cells, 1), (6 + 12) * w * h, 1e-9) << "what one side gains the other one loses";
    EXPECT_NEAR(rest_area(cells, 1, 2), w * h, 1e-9);
    EXPECT_NEAR(rest_area(cells, 1, 5), w * h * 1.25, 1e-9);
    EXPECT_NEAR(rest_area(cells, 2), 12 * w * h, 1e-9) << "chains hang from their neighbours' tops";
}

TEST(StitchCells, WhatCannotBeBuiltIsRefused) {
    EXPECT_EQ(cells_of(piece_of({})).refusal, CellsRefusal::no_rounds);
}

TEST(StitchCells, WhateverTheLanguageSaysIsBuiltOrRefused) {
    int built = 0, refused = 0;
    for (int number = 0; number < testing::random_cases(300); ++number) {
        SCOPED_TRACE(number);
        testing::RandomPiece random(static_cast<unsigned>(number) + 1);
        const Piece piece = random.piece();
        const StitchCells cells = cells_of(piece);
        ++(cells.usable() ? built : refused);
        if (!cells.usable()) continue;
        expect_sound(cells);
        for (const double slant : {-1., 1.})
            EXPECT_EQ(mesh_of(stitch_cells(piece, piece_graph(piece).graph, gauge, {}, slant)).turned, 0U);
        expect_every_loop_used_once(cells);
        if (::testing::Test::HasFailure()) FAIL() << "first of " << number;
    }
    RecordProperty("refused", refused);
    EXPECT_GT(built, 3 * refused);
}

}  // namespace
}  // namespace roundwright::test
