#include "render/pages/sections/teaching_plan.h"

#include <gtest/gtest.h>

#include "tests/render/pages/demo_toys.h"

namespace roundwright::render {
namespace {

using testing::ball;
using testing::puffin;

std::vector<Technique> techniques_of(const Toy& toy) {
    std::vector<PieceGraph> graphs;
    for (const Piece& piece : toy.pieces) graphs.push_back(piece_graph(piece));
    std::vector<const PieceGraph*> pointers;
    for (const PieceGraph& graph : graphs) pointers.push_back(&graph);
    std::vector<Technique> met;
    for (const UsedTechnique& used : used_techniques(toy, pointers)) met.push_back(used.technique);
    return met;
}

TEST(UsedTechniques, InTheOrderTheyAreMet) {
    EXPECT_EQ(techniques_of(ball(4)),
              (std::vector<Technique>{Technique::magic_ring, Technique::single_crochet, Technique::increase,
                                      Technique::decrease, Technique::draw_closed}));
}

TEST(UsedTechniques, OnlyWhatIsUsed) {
    Toy toy;
    toy.pieces = {testing::piece_of("Tube", {12, 12}, End::left_open)};
    toy.pieces[0].start = OpenTube{12};
    EXPECT_EQ(techniques_of(toy),
              (std::vector<Technique>{Technique::chain, Technique::foundation_ring, Technique::slip_stitch,
                                      Technique::single_crochet, Technique::fasten_off}));
}

TEST(TeachingPlan, ShowsWhatIsNewAndSkipsWhatGoesOn) {
    const auto study = study_pattern(puffin(), {});
    ASSERT_TRUE(study);
    const std::vector<TaughtPiece> plan = teaching_plan(*study, Terms::us);
    ASSERT_EQ(plan.size(), 2u);
    EXPECT_EQ(plan[0].lines[0].showing, Showing::in_full);  // magic ring
    EXPECT_EQ(plan[0].lines[1].showing, Showing::in_full);  // increases
    EXPECT_EQ(plan[0].lines[2].showing, Showing::begin);    // the next rhythm
    EXPECT_EQ(plan[1].lines[0].showing, Showing::skip);     // six in a ring, known by now
}

TEST(TeachingPlan, TimeRunsAtTheMakersPace) {
    Toy toy = ball(6);
    toy.making.stitches_per_minute = 24;
    toy.pieces[0].area_stretch = 0;
    const auto study = study_pattern(toy, {});
    const std::vector<TaughtPiece> plan = teaching_plan(*study, Terms::us);
    double before = 0;
    for (const TaughtLine& line : plan[0].lines) {
        EXPECT_NEAR(line.end_minutes, before + line.minutes, 1e-9);
        before = line.end_minutes;
    }
    // 432 stitches (3n - 1 rounds, n = 6); decreases take a little longer.
    EXPECT_GE(before, 432 / 24.0);
    EXPECT_LE(before, 1.1 * 432 / 24.0);
}

}  // namespace
}  // namespace roundwright::render
