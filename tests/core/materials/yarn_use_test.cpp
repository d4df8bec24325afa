#include "core/materials/yarn_use.h"

#include <cmath>
#include <gtest/gtest.h>

#include "core/stitches/stitch_measure.h"
#include "tests/core/materials/even_piece.h"

namespace roundwright {
namespace {

using testing::plain_graph;

TEST(YarnUse, AHalfDoubleTakesOneAndAHalfTimesASingle) {
    // Published measurements: half double about 1.5 times single crochet.
    const auto yarn_of = [](StitchKind kind) {
        return single_crochets_of_yarn({}, plain_graph({10}, {}, kind), 1)[0];
    };
    EXPECT_DOUBLE_EQ(yarn_of(StitchKind::single_crochet), 10);
    EXPECT_DOUBLE_EQ(yarn_of(StitchKind::half_double_crochet), 15);
    EXPECT_DOUBLE_EQ(yarn_of(StitchKind::skip), 0);
}

TEST(YarnUse, ASingleCrochetTakesFiveToEightWidths) {
    // Published measurements found: 5.5, 6.6 and 7.9 times the stitch width.
    const Estimate mm = single_crochet_yarn_mm(Gauge{5, 5, 0, 0}, {});
    for (const double published : {5.5, 6.6, 7.9}) {
        EXPECT_GE(published * 5, mm.low);
        EXPECT_LE(published * 5, mm.high);
    }
    EXPECT_DOUBLE_EQ(mm.low, 25);
    EXPECT_DOUBLE_EQ(mm.high, 40);
    EXPECT_DOUBLE_EQ(mm.likely, 33);
}

TEST(YarnUse, AnUncertainGaugeWidensTheRange) {
    const Estimate mm = single_crochet_yarn_mm(Gauge{5, 5, 0.5, 0.5}, {});
    // Half widths are two deviations; nine in ten lie within 1.645.
    EXPECT_NEAR(mm.low, 5 * 5 * std::exp(-1.645 * 0.05), 1e-9);
    EXPECT_NEAR(mm.high, 8 * 5 * std::exp(1.645 * 0.05), 1e-9);
}

TEST(YarnUse, TenStitchesUndoneReplaceTheBand) {
    Making making;
    making.yarn_per_ten_stitches_mm = 310;
    const Estimate mm = single_crochet_yarn_mm(Gauge{5, 5, 1, 1}, making);
    EXPECT_DOUBLE_EQ(mm.likely, 31);
    EXPECT_NEAR(mm.high - mm.low, 3.1, 1e-12);
}

TEST(YarnUse, CountsEachYarnByItself) {
    const Piece piece;
    const auto use = single_crochets_of_yarn(piece, plain_graph({6, 12, 18}, {0, 1, 0}), 2);
    EXPECT_EQ(use, (std::vector<double>{24, 12}));
}

TEST(YarnUse, CountsFoundationChainsAndJoins) {
    Piece piece;
    piece.start = OpenTube{10};
    piece.rounds.resize(3);
    piece.joining = Joining::joined;
    // 10 foundation chains; each of 3 rounds ends in a slip stitch and starts with a chain.
    const double chain = yarn_in_sc(StitchKind::chain);
    const double slip = yarn_in_sc(StitchKind::slip_stitch);
    EXPECT_DOUBLE_EQ(single_crochets_of_yarn(piece, plain_graph({10, 10, 10}), 1)[0],
                     30 + 10 * chain + 3 * (slip + chain));
}

TEST(YarnUse, AnUnknownYarnIsTheFirst) {
    EXPECT_EQ(single_crochets_of_yarn({}, plain_graph({6}, {7}), 2), (std::vector<double>{6, 0}));
    EXPECT_TRUE(single_crochets_of_yarn({}, plain_graph({6}), 0).empty());
}

TEST(YarnUse, NarrowStripesAreCarried) {
    const std::vector<int> counts(8, 12);
    EXPECT_EQ(yarn_ends({}, plain_graph(counts, {0, 0, 1, 1, 0, 0, 1, 1}), 2), (std::vector<int>{2, 2}));
    EXPECT_EQ(yarn_ends({}, plain_graph(counts, {0, 1, 1, 1, 0, 0, 0, 1}), 2), (std::vector<int>{4, 4}));
    EXPECT_EQ(yarn_ends({}, plain_graph(counts), 2), (std::vector<int>{2, 0}));
}

TEST(YarnUse, WeighsByTheLabel) {
    Yarn yarn;
    yarn.metres_per_100_g = 200;
    EXPECT_EQ(yarn_grams(yarn, {40, 30, 50}), (Estimate{20, 15, 25}));
}

TEST(YarnUse, WeighsByTheStandardWithoutALabel) {
    // Craft Yarn Council, light: 182 to 242 m per 100 g, computed from the published yards per pound.
    const Estimate g = yarn_grams({}, {100, 100, 100});
    EXPECT_NEAR(g.low, 100 * 100 / 242.0, 0.3);
    EXPECT_NEAR(g.high, 100 * 100 / 182.0, 0.3);
    for (const YarnWeight weight : {YarnWeight::lace, YarnWeight::super_bulky, YarnWeight::jumbo}) {
        Yarn yarn;
        yarn.weight = weight;
        const Estimate open = yarn_grams(yarn, {100, 90, 110});
        EXPECT_TRUE(std::isfinite(open.high));
        EXPECT_GE(open.low, 0);
        EXPECT_LE(open.low, open.likely);
        EXPECT_LE(open.likely, open.high);
    }
}

}  // namespace
}  // namespace roundwright
