#include "core/stitches/stitch_layout.h"

#include <cstdint>
#include <gtest/gtest.h>

#include "tests/core/mesh/example_pieces.h"

namespace roundwright {
namespace {

/// Neighbours meet and the whole edge below is taken.
void expect_gapless(const LaidRound& round) {
    ASSERT_FALSE(round.cells.empty());
    for (std::size_t c = 1; c < round.cells.size(); ++c)
        EXPECT_EQ(round.cells[c].below_first, round.cells[c - 1].below_last) << "cell " << c;
    EXPECT_EQ(round.cells.front().below_first + round.loops_below, round.cells.back().below_last);
}

GraphRound round_of(std::vector<GraphStitch> stitches, int below) {
    GraphRound round;
    round.stitches = std::move(stitches);
    round.loops_below = below;
    return round;
}

GraphStitch single(int foot) { return {Stitch{}, foot}; }

GraphStitch of_kind(StitchKind kind, int feet, int foot) {
    Stitch stitch;
    stitch.kind = kind;
    stitch.feet = static_cast<std::uint16_t>(feet);
    return {stitch, foot};
}

TEST(StitchLayout, IncreasesShareALoopAndDecreasesSpanTwo) {
    auto graph = test::even_graph({6, 9, 6});
    const auto rounds = lay_stitches(graph);
    ASSERT_EQ(rounds.size(), 3U);
    EXPECT_EQ(rounds[1].cells[1].below_first, 1.0);
    EXPECT_EQ(rounds[1].cells[1].below_last, 1.5);
    EXPECT_EQ(rounds[1].cells[2].below_last, 2.0);
    EXPECT_EQ(rounds[2].cells[1].below_last - rounds[2].cells[1].below_first, 2.0);
    for (const auto& round : rounds) expect_gapless(round);
}

TEST(StitchLayout, AChainTakesThePlaceOfASkippedLoop) {
    StitchGraph graph;
    graph.foundation_loops = 4;
    graph.rounds.push_back(
        round_of({single(0), of_kind(StitchKind::chain, 0, 1), of_kind(StitchKind::skip, 1, 1), single(2),
                  of_kind(StitchKind::chain, 0, 3), of_kind(StitchKind::skip, 1, 3)},
                 4));
    const auto rounds = lay_stitches(graph);
    ASSERT_EQ(rounds[0].cells.size(), 4U);
    expect_gapless(rounds[0]);
    EXPECT_EQ(rounds[0].cells[1].below_first, 1.0);
    EXPECT_EQ(rounds[0].cells[1].below_last, 2.0);
    EXPECT_EQ(rounds[0].cells[3].below_last, 4.0);
}

TEST(StitchLayout, NeighboursMeetOverASkippedLoop) {
    StitchGraph graph;
    graph.foundation_loops = 3;
    graph.rounds.push_back(round_of({single(0), of_kind(StitchKind::skip, 1, 1), single(2)}, 3));
    const auto rounds = lay_stitches(graph);
    ASSERT_EQ(rounds[0].cells.size(), 2U);
    expect_gapless(rounds[0]);
    EXPECT_EQ(rounds[0].cells[0].below_last, 1.5);
}

TEST(StitchLayout, APartialRoundCarriesTheOtherLoopsUp) {
    auto graph = test::even_graph({6, 6});
    GraphRound partial = round_of({single(0), single(1), single(2)}, 3);
    partial.first_below = 2;
    graph.rounds.push_back(partial);
    const auto rounds = lay_stitches(graph);
    ASSERT_EQ(rounds[2].cells.size(), 6U);
    expect_gapless(rounds[2]);
    EXPECT_TRUE(rounds[2].cells[0].carried);
    EXPECT_EQ(rounds[2].cells[1].round, 1);
    EXPECT_EQ(rounds[2].cells[1].stitch, 1);
    EXPECT_FALSE(rounds[2].cells[2].carried);
    EXPECT_EQ(rounds[2].cells[2].round, 2);
    EXPECT_TRUE(rounds[2].cells[5].carried);
}

TEST(StitchLayout, TurnedRowsStandOverTheStitchesTheyAreWorkedInto) {
    // Row 2 meets row 1 from its end: its first stitch, an increase, is worked into row 1's last.
    StitchGraph graph;
    graph.foundation_loops = 3;
    graph.rounds.push_back(round_of({single(0), single(1), single(2)}, 3));
    auto more = single(0);
    more.stitch.same_foot = true;
    graph.rounds.push_back(round_of({single(0), more, single(1), single(2)}, 3));
    const auto rows = lay_stitches(graph, true);
    for (const auto& row : rows) expect_gapless(row);
    ASSERT_EQ(rows[1].cells.size(), 4U);
    EXPECT_EQ(rows[1].cells[3].stitch, 0);
    EXPECT_EQ(rows[1].cells[3].below_first, 2.5);
    EXPECT_EQ(rows[1].cells[2].stitch, 1);
    EXPECT_EQ(rows[1].cells[0].stitch, 3);
    EXPECT_EQ(rows[1].cells[0].below_first, 0.0);
}

TEST(StitchLayout, AGraphThatDoesNotComeOutIsStretchedOverTheRest) {
    StitchGraph graph;
    graph.foundation_loops = 6;
    graph.rounds.push_back(
        round_of({single(0), single(9), single(2), of_kind(StitchKind::single_crochet, 7, 1)}, 6));
    graph.rounds.push_back(round_of({single(0)}, 12));
    for (const auto& round : lay_stitches(graph)) expect_gapless(round);
}

}  // namespace
}  // namespace roundwright
