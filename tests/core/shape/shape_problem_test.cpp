#include "core/shape/shape_problem.h"

#include <gtest/gtest.h>
#include <numbers>

#include "core/rounds/piece_graph.h"

namespace roundwright::test {
namespace {

constexpr Gauge gauge{5, 4, 0, 0};

Piece piece_of_rounds(const std::vector<WorkedEvenly>& rounds) {
    Piece piece;
    for (const WorkedEvenly& worked : rounds) {
        Round round;
        round.working = worked;
        piece.rounds.push_back(round);
    }
    return piece;
}

ShapeProblem problem_of(const Piece& piece) { return shape_problem(piece, piece_graph(piece).graph, gauge); }

TEST(ShapeProblem, SinglesFromARing) {
    Piece piece = piece_of_rounds({{6}, {12}, {12}, {9}});
    piece.area_stretch = 0.03;
    const ShapeProblem problem = problem_of(piece);
    EXPECT_EQ(problem.rest_loop_mm, (std::vector<double>{0, 30, 60, 60, 45}));
    EXPECT_EQ(problem.rest_height_mm, (std::vector<double>{4, 4, 4, 4}));
    EXPECT_EQ(problem.first, MeridianEnd::pole);
    EXPECT_EQ(problem.last, MeridianEnd::open);
    EXPECT_EQ(problem.area_stretch, 0.03);
    EXPECT_FALSE(problem.equivalent_round);
}

TEST(ShapeProblem, DrawnClosedHasAFan) {
    Piece piece = piece_of_rounds({{6}, {6}});
    piece.end = End::drawn_closed;
    const ShapeProblem problem = problem_of(piece);
    EXPECT_EQ(problem.last, MeridianEnd::drawn_closed);
    EXPECT_EQ(problem.fan_height_mm, 2.5);  // half a stitch width
}

// Turning height, common practice: a single is half of a double.
TEST(ShapeProblem, TallStitchesStandTaller) {
    const ShapeProblem problem = problem_of(piece_of_rounds({{6},
                                                             {12, StitchKind::half_double_crochet},
                                                             {24, StitchKind::double_crochet},
                                                             {24, StitchKind::treble_crochet}}));
    EXPECT_EQ(problem.rest_height_mm, (std::vector<double>{4, 6, 8, 12}));
}

TEST(ShapeProblem, TubeAndRingStartOpenAtTheirChain) {
    Piece piece = piece_of_rounds({{12}});
    piece.start = OpenTube{12};
    EXPECT_EQ(problem_of(piece).rest_loop_mm, (std::vector<double>{60, 60}));
    EXPECT_EQ(problem_of(piece).first, MeridianEnd::open);
    piece.start = ChainRing{4};
    EXPECT_EQ(problem_of(piece).rest_loop_mm.front(), 20);
    EXPECT_EQ(problem_of(piece).first, MeridianEnd::open);
}

/// Stitches worked into a ring of chains cover the chains: after round 1 the edge is round 1's alone.
TEST(ShapeProblem, RoundOneIsWorkedOverTheWholeRingOfChains) {
    Piece piece = piece_of_rounds({{10}, {16}, {10}});
    piece.start = ChainRing{5};
    const ShapeProblem problem = problem_of(piece);
    EXPECT_EQ(problem.rest_loop_mm, (std::vector<double>{25, 50, 80, 50}));
    EXPECT_EQ(problem.rest_height_mm, (std::vector<double>{4, 4, 4}));
}

TEST(ShapeProblem, OvalIsAnEquivalentRound) {
    Piece piece = piece_of_rounds({{18}});
    piece.start = OvalChain{6};
    const ShapeProblem problem = problem_of(piece);
    EXPECT_TRUE(problem.equivalent_round);
    EXPECT_EQ(problem.first, MeridianEnd::drawn_closed);
    const double loop = problem.rest_loop_mm.front();
    EXPECT_GE(loop, 50);
    EXPECT_LE(loop, 70);  // both sides of the chain
    EXPECT_DOUBLE_EQ(problem.first_fan_height_mm, loop / (2 * std::numbers::pi));
}

TEST(ShapeProblem, RowsAreAnEquivalentRound) {
    Piece piece = piece_of_rounds({{12}, {12}});
    piece.joining = Joining::rows;
    EXPECT_TRUE(problem_of(piece).equivalent_round);
}

// A round of singles and doubles is as high as they are on the mean.
TEST(ShapeProblem, MixedRoundIsAsHighAsItsMean) {
    StitchGraph graph;
    GraphRound round;
    round.stitches = {{{StitchKind::single_crochet}, 0}, {{StitchKind::double_crochet}, 1}};
    graph.rounds = {round};
    EXPECT_EQ(shape_problem({}, graph, gauge).rest_height_mm, (std::vector<double>{6}));
}

// Half a round of 12 singles, worked over loops 3 to 8 of 12, adds half a height and leaves the edge as long.
TEST(ShapeProblem, PartialRoundCountsByItsShare) {
    StitchGraph graph;
    GraphRound ring;
    ring.stitches.assign(12, GraphStitch{});
    GraphRound half;
    half.first_below = 3;
    half.loops_below = 6;
    half.stitches.assign(6, GraphStitch{});
    graph.rounds = {ring, half};
    const ShapeProblem problem = shape_problem({}, graph, gauge);
    EXPECT_EQ(problem.rest_loop_mm, (std::vector<double>{0, 60, 60}));
    EXPECT_DOUBLE_EQ(problem.rest_height_mm[1], 2);
}

TEST(ShapeProblem, BrokenRoundsStillHaveSomeSize) {
    StitchGraph graph;
    GraphRound outside;
    outside.first_below = 100;
    outside.loops_below = -5;
    graph.rounds = {GraphRound{}, outside};
    const ShapeProblem problem = shape_problem({}, graph, gauge);
    for (const double height : problem.rest_height_mm) EXPECT_GT(height, 0);
    EXPECT_GT(problem.rest_loop_mm.back(), 0);
    EXPECT_TRUE(shape_problem({}, {}, gauge).rest_height_mm.empty());
}

}  // namespace
}  // namespace roundwright::test
