#include <algorithm>
#include <gtest/gtest.h>
#include <string>
#include <variant>

#include "core/language/pattern/read_pattern.h"

namespace roundwright {
namespace {

const std::string leg = "Rnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: sc around (12)\n";

bool has(const ReadPattern& read, ReadCode code) {
    return std::any_of(read.diagnostics.begin(), read.diagnostics.end(),
                       [&](const ReadDiagnostic& d) { return d.code == code; });
}

TEST(BegunElsewhere, LegsJoinedWithChainsBeginTheBody) {
    for (const char* join : {"Rnd 4: ch 3, sc 12 around leg 1, sc 3 in the chains, sc 12 around leg 2, sc 3 "
                             "along the other side "
                             "of the chain (30)\n",
                             "Rnd 4: ch 3, sc in each st of the first leg, sc in 3 ch, sc in each st of the "
                             "second leg, sc in the "
                             "other side of the 3 ch (30)\n",
                             "Ch 3 and join to the first leg.\nRnd 4: sc around (30)\n"}) {
        const ReadPattern read =
            read_pattern("Legs (make 2)\n" + leg + "\nBody\n" + join + "Rnd 5: sc around (30)\n");
        ASSERT_EQ(read.pieces.size(), 2u) << join;
        EXPECT_TRUE(read.diagnostics.empty()) << join;
        EXPECT_EQ(read.pieces[1].name, "Body");
        EXPECT_EQ(read.pieces[1].rounds.size(), 2u);
        ASSERT_TRUE(std::holds_alternative<WorkedOn>(read.pieces[1].start)) << join;
        EXPECT_EQ(std::get<WorkedOn>(read.pieces[1].start), (WorkedOn{.stitches = 30, .chains_between = 3}));
    }
}

TEST(BegunElsewhere, LegsJoinedWithoutChainsBeginTheBody) {
    const ReadPattern read = read_pattern("Feet (make 2)\n" + leg +
                                          "\nBody\nRnd 4: sc in each st around both feet (24)\n"
                                          "Rnd 5: sc around (24)\n");
    ASSERT_EQ(read.pieces.size(), 2u);
    EXPECT_TRUE(read.diagnostics.empty());
    ASSERT_TRUE(std::holds_alternative<WorkedOn>(read.pieces[1].start));
    EXPECT_EQ(std::get<WorkedOn>(read.pieces[1].start), (WorkedOn{.stitches = 24, .chains_between = 0}));
}

TEST(BegunElsewhere, LegsThatDoNotAddUpAreTold) {
    const ReadPattern read = read_pattern("Legs (make 2)\n" + leg +
                                          "\nBody\nRnd 4: sc 12 around leg 1, sc 11 around leg 2 (24)\n");
    ASSERT_EQ(read.pieces.size(), 2u);
    EXPECT_FALSE(read.proved());
}

TEST(BegunElsewhere, ARowThroughBothLayersIsTheEnd) {
    const ReadPattern read =
        read_pattern("Ear\n" + leg + "Rnd 4: Fold flat, 6 sc through both layers (6)\nFasten off.\n");
    ASSERT_EQ(read.pieces.size(), 1u);
    EXPECT_EQ(read.pieces[0].rounds.size(), 3u);
    EXPECT_EQ(read.pieces[0].end, End::sewn_straight);
    EXPECT_TRUE(has(read, ReadCode::closed_flat));
    EXPECT_NE(read.pieces[0].rounds.back().note.find("through both layers"), std::string::npos);
    // Where rounds follow, it is no end.
    EXPECT_FALSE(
        has(read_pattern("Ear\n" + leg + "Rnd 4: 6 sc through both layers (6)\nRnd 5: sc around (6)\n"),
            ReadCode::closed_flat));
}

TEST(BegunElsewhere, LoopsThatWereLeftBeginARing) {
    const ReadPattern read = read_pattern("Body\n" + leg +
                                          "\nSkirt\nAttach white to a free front loop of round 2.\n"
                                          "Rnd 1: (sc, inc) x 6 (18)\n");
    ASSERT_EQ(read.pieces.size(), 2u);
    EXPECT_TRUE(has(read, ReadCode::loops_left_over));
    ASSERT_TRUE(std::holds_alternative<OpenTube>(read.pieces[1].start));
    EXPECT_EQ(std::get<OpenTube>(read.pieces[1].start).chains, 12);
    EXPECT_TRUE(read.proved());
}

TEST(BegunElsewhere, ASecondOneBySentenceIsMadeTwice) {
    EXPECT_EQ(read_pattern("Leg\n" + leg + "Make a second leg, but do not fasten off.\n").pieces.at(0).make,
              2);
    EXPECT_EQ(read_pattern("Leg\n" + leg + "Sew the second leg on.\n").pieces.at(0).make, 1);
}

TEST(MaterialsOfAText, FillTheToy) {
    const ReadPattern read = read_pattern(
        "You need: cotton in red (A) and white (B), hook 2,5 mm, two 6 mm safety eyes\n"
        "Gauge: 22 sts and 24 rows = 10 cm\n\nBody\n" +
        leg);
    EXPECT_EQ(read.hook_mm, 2.5);
    ASSERT_GE(read.yarn_names.size(), 2u);
    EXPECT_EQ(read.yarn_names[1], "white");
    ASSERT_TRUE(read.gauge.has_value());
    const Toy toy = toy_of(read);
    ASSERT_TRUE(std::holds_alternative<SwatchGauge>(toy.gauge));
    EXPECT_EQ(std::get<SwatchGauge>(toy.gauge).stitches, 22);
    EXPECT_EQ(std::get<SwatchGauge>(toy.gauge).rounds, 24);
    EXPECT_EQ(std::get<SwatchGauge>(toy.gauge).width_mm, 100);
    EXPECT_TRUE(read.proved());
}

}  // namespace
}  // namespace roundwright
