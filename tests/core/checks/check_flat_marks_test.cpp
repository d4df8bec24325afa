#include <gtest/gtest.h>

#include "tests/core/checks/checked_piece.h"

namespace roundwright {
namespace {

using namespace test;

Toy marked_flat(Toy toy) {
    for (Round& round : toy.pieces[0].rounds) round.lies_flat = true;
    return toy;
}

// Six single crochets a round lie flat, five make a cone of half angle 52.7 degrees, which rises 5 cos 52.7
// = 3.03 mm a round at h = w = 5 mm.
TEST(CheckFlatMarks, SixLieFlatAndFiveCup) {
    EXPECT_EQ(named(checks_of(marked_flat(toy_of(disc(6, 6))))), "");
    const auto checks = checks_of(marked_flat(toy_of(disc(5, 6))));
    ASSERT_EQ(checks.size(), 1) << named(checks);
    EXPECT_EQ(checks[0].code, CheckCode::cups_though_flat);
    EXPECT_NEAR(std::get<Millimetres>(checks[0].arguments.at(0)).value, 3.03, 0.02);
    EXPECT_EQ(checks[0].arguments.at(1), Argument(5));
    EXPECT_NEAR(std::get<double>(checks[0].arguments.at(2)), 6.2832, 1e-4);
}

TEST(CheckFlatMarks, FiveMayCupWhereNothingWasPromised) {
    EXPECT_EQ(named(checks_of(toy_of(disc(5, 6)))), "");
}

TEST(CheckFlatMarks, CupIsCuredByTheStartOrByTakingOffTheMark) {
    const Toy toy = marked_flat(toy_of(disc(5, 6)));
    const auto cures = checks_of(toy).at(0).cures;
    ASSERT_EQ(cures.size(), 2);
    EXPECT_EQ(cures[0].kind, CureKind::change_start_count);
    EXPECT_EQ(counts_of(cures[0].rounds), disc(6, 6));
    EXPECT_EQ(cures[1].kind, CureKind::remove_flat_mark);
    for (const Cure& cure : cures) EXPECT_EQ(named(checks_of(cured(toy, cure))), "");
}

TEST(CheckFlatMarks, RuffleOfAMarkedRoundIsSaidOnce) {
    const Toy toy = marked_flat(toy_of(disc(8, 6)));
    const auto checks = checks_of(toy);
    ASSERT_EQ(named(checks), "ruffles_though_flat round 6; ");
    EXPECT_EQ(checks[0].arguments.size(), 5);
    EXPECT_EQ(counts_of(checks[0].cures.at(0).rounds), disc(6, 6));
    EXPECT_EQ(named(checks_of(cured(toy, checks[0].cures[0]))), "");
}

TEST(CheckFlatMarks, EvenRoundsMarkedFlatStandUp) {
    Toy toy = toy_of({6, 12, 18, 18, 18});
    toy.pieces[0].rounds[4].lies_flat = true;
    const auto checks = checks_of(toy);
    ASSERT_EQ(named(checks), "cups_though_flat round 5; ");
    EXPECT_EQ(checks[0].arguments.at(1), Argument(0));
}

// A flat ring worked inwards from a chain of 48, six decreases a round, lies as flat as one worked outwards.
TEST(CheckFlatMarks, RoundsThatCloseFlatKeepThePromise) {
    Toy toy = toy_of({42, 36, 30, 24, 18});
    toy.pieces[0].start = OpenTube{48};
    EXPECT_EQ(named(checks_of(marked_flat(toy))), "");
}

}  // namespace
}  // namespace roundwright
