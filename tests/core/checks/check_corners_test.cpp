#include <gtest/gtest.h>

#include "core/checks/stacked_increases.h"
#include "tests/core/checks/checked_piece.h"

namespace roundwright {
namespace {

using namespace test;

double out_mm(const Check& check) { return std::get<Millimetres>(check.arguments.at(1)).value; }

// Increases stacked over each other make corners, staggered ones hide them (common practice). A hexagon whose
// perimeter is that of a circle of radius r has its corners 2 / sqrt 3 = 1.1547 times as far out as its sides
// (arithmetic): 0.1403 r apart, where r is what the stacked rounds, the fourth and later, have grown by: 5
// mm each, lying flat. A corner of less than a stitch (5 mm) does not show (a value of our own): 7 such
// rounds stand out by 4.91 mm, 8 by 5.61 mm.
TEST(CheckCorners, AreNamedOnceTheyStandOutByAStitch) {
    EXPECT_EQ(named(checks_of(toy_of(disc(6, 10)))), "");
    const auto checks = checks_of(toy_of(disc(6, 11)));
    ASSERT_EQ(named(checks), "corners round 11; ");
    EXPECT_EQ(checks[0].severity, Severity::note);
    EXPECT_EQ(std::get<int>(checks[0].arguments.at(0)), 6);
    EXPECT_NEAR(out_mm(checks[0]), 5.61, 0.01);
    EXPECT_EQ(std::get<int>(checks[0].arguments.at(2)), 4);
    EXPECT_EQ(std::get<int>(checks[0].arguments.at(3)), 11);
}

TEST(CheckCorners, MovingTheIncreasesOffEachOtherCuresThem) {
    const Toy toy = toy_of(disc(6, 12));
    const auto corners = checks_of(toy, CheckCode::corners);
    ASSERT_EQ(corners.size(), 1u);
    ASSERT_EQ(corners[0].cures.size(), 1u);
    EXPECT_EQ(corners[0].cures[0].kind, CureKind::stagger_increases);
    const Toy mended = cured(toy, corners[0].cures[0]);
    EXPECT_EQ(named(checks_of(mended)), "");
    EXPECT_EQ(counts_of(mended.pieces[0].rounds), disc(6, 12));
}

TEST(CheckCorners, WrittenRoundsAreSeenTooButNotChanged) {
    Toy toy = toy_of(disc(6, 12));
    for (int k = 3; k <= 12; ++k)
        toy.pieces[0].rounds[static_cast<std::size_t>(k) - 1].working =
            AsWritten{"[" + std::to_string(k - 2) + " sc, inc] x 6"};
    const auto corners = checks_of(toy, CheckCode::corners);
    ASSERT_EQ(corners.size(), 1u);
    EXPECT_TRUE(corners[0].cures.empty());
}

// Stuffing draws them round.
TEST(CheckCorners, StuffedPiecesHaveThemOnlyWhereAFlatRoundIsPromised) {
    Toy toy = toy_of(disc(6, 12));
    toy.pieces[0].area_stretch = light_stuffing_stretch;
    EXPECT_EQ(named(checks_of(toy, CheckCode::corners)), "");
}

TEST(StackedIncreases, StandOverThoseBelow) {
    const auto round = [](int k, SpacingPhase phase) {
        return even_round({6 * k, StitchKind::single_crochet, LoopPart::both, Spacing::stacked}, 6 * (k - 1),
                          phase, 0);
    };
    for (int k = 4; k < 40; ++k) {
        EXPECT_TRUE(are_stacked(round(k, SpacingPhase::at_end), round(k + 1, SpacingPhase::at_end))) << k;
        EXPECT_FALSE(are_stacked(round(k, SpacingPhase::at_end), round(k + 1, SpacingPhase::at_middle))) << k;
        EXPECT_FALSE(are_stacked(round(k, SpacingPhase::at_middle), round(k + 1, SpacingPhase::at_end))) << k;
    }
    const auto places = increase_places(round(3, SpacingPhase::at_end));
    ASSERT_EQ(places.size(), 6u);
    EXPECT_NEAR(places[0], 1.5 / 12, 1e-12);  // [sc, inc]: over the second of every two
}

}  // namespace
}  // namespace roundwright
