#include "core/shape/oval_plan.h"

#include <gtest/gtest.h>
#include <numbers>

#include "tests/core/checks/checked_piece.h"

namespace roundwright {
namespace {

using namespace test;

PieceStudy oval(int chains, const std::vector<int>& counts, double stretch = unstuffed_stretch) {
    Toy toy = toy_of(counts);
    toy.pieces[0].start = OvalChain{chains};
    toy.pieces[0].area_stretch = stretch;
    return study_piece(toy, 0);
}

std::optional<OvalPlan> plan(const PieceStudy& study) { return oval_plan(study.problem(), study.measures()); }

// A flat oval around 10 chains, three stitches more at either end each round (common practice): straight
// sides of 10 stitches, so it is longer than wide by those 50 mm, and its edge is a parallel curve of the
// chain: 2 L + 2 pi d = 2 (length - width) + pi width (Steiner). It is pulled wider by 2 pi / 6 at its ends.
TEST(OvalPlan, IsTheParallelCurveOfTheChain) {
    const PieceStudy study = oval(10, {26, 32, 38, 44, 50});
    const auto made = plan(study);
    ASSERT_TRUE(made);
    EXPECT_NEAR(made->length_mm - made->width_mm, 50, 1e-6);
    EXPECT_NEAR(made->width_mm, 2 * 5 * 5, 1e-6);  // five rounds on either side
    const double around = 2 * (made->length_mm - made->width_mm) + std::numbers::pi * made->width_mm;
    EXPECT_NEAR(around, 2 * std::numbers::pi * study.revolved().radius_mm.back(), 1e-6);
    EXPECT_NEAR(around, 20 * 5 + 30 * 5 * 2 * std::numbers::pi / 6, 1e-6);
}

// Even rounds stand up as the side of an oval basket: its plan stays.
TEST(OvalPlan, StandingSidesKeepIt) {
    const auto flat = plan(oval(10, {26, 32, 38, 44}));
    const auto basket = plan(oval(10, {26, 32, 38, 44, 44, 44, 44}));
    ASSERT_TRUE(flat && basket);
    EXPECT_NEAR(basket->length_mm, flat->length_mm, 0.05 * flat->length_mm);
    EXPECT_NEAR(basket->width_mm, flat->width_mm, 0.1 * flat->width_mm);
}

TEST(OvalPlan, IsNotClaimedOfWhatItCannotKnow) {
    EXPECT_FALSE(plan(oval(10, {26, 32, 38, 44}, medium_stuffing_stretch)));
    EXPECT_FALSE(plan(study_piece(toy_of(disc(6, 5)), 0)));
    Toy rows = toy_of({12, 12, 12});
    rows.pieces[0].start = OpenTube{12};
    rows.pieces[0].joining = Joining::rows;
    EXPECT_FALSE(plan(study_piece(rows, 0)));
    EXPECT_FALSE(plan(oval(10, {20, 16, 12})));  // narrower than its chain
    EXPECT_TRUE(starts_oval(oval(10, {26}).problem()));
    EXPECT_FALSE(starts_oval(study_piece(toy_of(disc(6, 5)), 0).problem()));
}

}  // namespace
}  // namespace roundwright
