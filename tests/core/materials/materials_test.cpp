#include "core/materials/materials.h"

#include <gtest/gtest.h>

#include "core/materials/stuffing.h"
#include "tests/core/materials/even_piece.h"

namespace roundwright {
namespace {

using testing::plain_graph;

/// A ball of six rounds of increases, six even and six of decreases: 432 stitches over 17 rounds.
StitchGraph ball_of_six() {
    std::vector<int> counts;
    for (int i = 1; i <= 6; ++i) counts.push_back(6 * i);
    for (int i = 0; i < 6; ++i) counts.push_back(36);
    for (int i = 5; i >= 1; --i) counts.push_back(6 * i);
    return plain_graph(counts);
}

Toy toy_of_one_yarn() {
    Toy toy;
    toy.yarns.resize(1);
    toy.yarns[0].metres_per_100_g = 200;
    toy.making.yarn_per_ten_stitches_mm = 330;
    toy.making.stitches_per_minute = 18;
    toy.pieces.resize(1);
    return toy;
}

TEST(Materials, OfOneBall) {
    const Toy toy = toy_of_one_yarn();
    const StitchGraph graph = ball_of_six();
    const Materials sum = materials(toy, {{&toy.pieces[0], &graph, Gauge{5, 5, 0, 0}, 1e5}});
    EXPECT_EQ(sum.stitches, 432);  // 3n-1 rounds, n = 6: computed
    EXPECT_NEAR(sum.yarns[0].metres.likely, 432 * 0.033 + 2 * 0.15, 1e-9);
    EXPECT_NEAR(sum.yarns[0].grams.likely, sum.yarns[0].metres.likely / 2, 1e-9);
    EXPECT_NEAR(sum.stuffing_g.likely, 0.1 * guessed_fill_kg_per_m3.likely, 1e-9);
    EXPECT_NEAR(sum.minutes.likely, 24, 1e-9);
}

TEST(Materials, APieceMadeTwiceCountsTwice) {
    Toy toy = toy_of_one_yarn();
    const StitchGraph graph = ball_of_six();
    const WorkedPiece once{&toy.pieces[0], &graph, Gauge{5, 5, 0, 0}, 1e5};
    const double metres = materials(toy, {once}).yarns[0].metres.likely;
    toy.pieces[0].make = 2;
    const Materials twice = materials(toy, {once});
    EXPECT_DOUBLE_EQ(twice.yarns[0].metres.likely, 2 * metres);
    EXPECT_EQ(twice.stitches, 864);
    EXPECT_NEAR(twice.stuffing_g.likely, 0.2 * guessed_fill_kg_per_m3.likely, 1e-9);
}

TEST(Materials, AToyWithoutYarnsStillNeedsSome) {
    Toy toy = toy_of_one_yarn();
    toy.yarns.clear();
    const StitchGraph graph = plain_graph({6, 12});
    const Materials sum = materials(toy, {{&toy.pieces[0], &graph, Gauge{5, 5, 0, 0}, 0}});
    ASSERT_EQ(sum.yarns.size(), 1u);
    EXPECT_GT(sum.yarns[0].metres.likely, 0);
    EXPECT_GT(sum.minutes.likely, 0);
}

TEST(Materials, NothingOfNothing) {
    const Materials sum = materials({}, {});
    EXPECT_EQ(sum.stitches, 0);
    EXPECT_EQ(sum.stuffing_g, exactly(0));
}

}  // namespace
}  // namespace roundwright
