#include <algorithm>
#include <gtest/gtest.h>

#include "core/shape/fabric_limits.h"
#include "tests/core/checks/checked_piece.h"

namespace roundwright {
namespace {

using test::ball;
using test::checks_of;
using test::named;
using test::stuffed_toy_of;

TEST(CheckSigns, AnOrdinaryBallHasNone) {
    for (int n : {4, 6, 8})
        EXPECT_TRUE(checks_of(stuffed_toy_of(ball(n))).empty()) << named(checks_of(stuffed_toy_of(ball(n))));
}

TEST(CheckSigns, GapsShowOnceTheStretchPassesTheLimit) {
    Toy toy = stuffed_toy_of(ball(6));
    bool seen_below = false;
    bool seen_above = false;
    for (double stretch : {0.04, 0.1, 0.2, 0.3, 0.4}) {
        toy.pieces[0].area_stretch = stretch;
        const PieceStudy study = study_piece(toy, 0);
        const double most = std::max(*std::ranges::max_element(study.revolved().course_stretch),
                                     *std::ranges::max_element(study.revolved().wale_stretch));
        const bool gaps = !checks_of(toy, CheckCode::gaps).empty();
        EXPECT_EQ(gaps, most > gaps_above_stretch) << stretch << ": " << most;
        seen_below |= !gaps;
        seen_above |= gaps;
    }
    EXPECT_TRUE(seen_below && seen_above);
}

TEST(CheckSigns, SofterStuffingIsOfferedForGaps) {
    Toy toy = stuffed_toy_of(ball(6));
    toy.pieces[0].area_stretch = 0.4;
    const auto gaps = checks_of(toy, CheckCode::gaps);
    ASSERT_EQ(gaps.size(), 1u);
    ASSERT_EQ(gaps[0].cures.size(), 1u);
    EXPECT_EQ(cured_piece(toy.pieces[0], gaps[0].cures[0]).area_stretch, 0.2);
}

// Three rounds of a neck, widened less from round to round: the first of them, with its own width.
TEST(CheckSigns, ANeckIsNamedWhereItIsWidenedMost) {
    Toy toy = stuffed_toy_of({6, 12, 18, 24, 30, 30, 30, 30, 24, 18, 12, 12, 18, 24, 24, 24, 18, 12, 6});
    const PieceStudy study = study_piece(toy, 0);
    const auto necks = checks_of(toy, CheckCode::widening_neck);
    ASSERT_EQ(necks.size(), 1U);
    EXPECT_EQ(necks[0].round, 10);
    EXPECT_GT(study.revolved().radius_mm[11], study.revolved().radius_mm[12]);
    EXPECT_NEAR(std::get<Millimetres>(necks[0].arguments[0]).value, 2 * study.revolved().radius_mm[11], 1e-9);
}

TEST(CheckSigns, ANeckThatStuffingWidensIsNamed) {
    // A gourd with a narrow neck of few stitches, stuffed firmly; the same stuffed lightly keeps its neck.
    Toy toy = stuffed_toy_of({6, 12, 18, 24, 30, 30, 30, 24, 18, 18, 18, 24, 30, 30, 30, 24, 18, 12, 6});
    toy.pieces[0].area_stretch = 0.12;
    const bool firm = !checks_of(toy, CheckCode::widening_neck).empty();
    toy.pieces[0].area_stretch = 0.001;
    const bool light = !checks_of(toy, CheckCode::widening_neck).empty();
    EXPECT_TRUE(firm);
    EXPECT_FALSE(light);
}

// Straight from six increases to six decreases the growth changes by 1.9, more than the limit of 1.5; an even
// round between halves it.
TEST(CheckSigns, ARidgeIsCuredByAnEvenRound) {
    const Toy toy = stuffed_toy_of({6, 12, 18, 24, 30, 36, 42, 48, 42, 36, 30, 24, 18, 12, 6});
    const auto ridge = checks_of(toy, CheckCode::ridge);
    ASSERT_EQ(named(ridge), "ridge round 8; ");
    ASSERT_EQ(ridge[0].cures.size(), 1u);
    EXPECT_EQ(ridge[0].cures[0].kind, CureKind::add_even_round);
    const Toy mended = test::cured(toy, ridge[0].cures[0]);
    EXPECT_EQ(mended.pieces[0].rounds.size(), 16u);
    EXPECT_EQ(named(checks_of(mended)), "");
}

TEST(CheckSigns, AShelfMakesAnEdge) {
    EXPECT_TRUE(checks_of(stuffed_toy_of(ball(6)), CheckCode::ridge).empty());
    const Toy shelf = stuffed_toy_of({6, 12, 12, 12, 12, 24, 48, 48, 48, 48, 48, 42, 36, 30, 24, 18, 12, 6});
    EXPECT_FALSE(checks_of(shelf, CheckCode::ridge).empty() && checks_of(shelf, CheckCode::crease).empty())
        << named(checks_of(shelf));
}

}  // namespace
}  // namespace roundwright
