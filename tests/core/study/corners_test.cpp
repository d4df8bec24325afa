#include "core/study/corners.h"

#include <gtest/gtest.h>

#include "core/study/fabric_stage.h"
#include "tests/core/checks/checked_piece.h"

namespace roundwright::test {
namespace {

PieceStudy fine_study(Toy toy, Spacing spacing) {
    toy.pieces[0].joining = Joining::joined;
    for (Round& round : toy.pieces[0].rounds) std::get<WorkedEvenly>(round.working).spacing = spacing;
    const auto round = std::make_shared<const PieceStudy>(study_piece(toy, 0));
    return *with_every_stitch(round, toy, 0).study;
}

TEST(Corners, OfAStackedBallStandOutAtItsShoulder) {
    const auto corners = highest_corners(fine_study(stuffed_toy_of(ball(10)), Spacing::stacked));
    ASSERT_TRUE(corners.has_value());
    EXPECT_EQ(corners->corners, 6);
    EXPECT_GT(corners->out_mm, 0.5);
    EXPECT_LT(corners->out_mm, 3);
    EXPECT_LT(corners->round, 10) << "where it still increases";
}

TEST(Corners, OfAStaggeredBallThereAreNone) {
    EXPECT_FALSE(highest_corners(fine_study(stuffed_toy_of(ball(8)), Spacing::staggered)).has_value());
    EXPECT_FALSE(highest_corners(study_piece(stuffed_toy_of(ball(8)), 0)).has_value()) << "not solved so";
}

// Reckoned of the sharp hexagon that straight sectors tend to; fabric rounds it off.
TEST(Corners, OfAFlatDiscAreMeasuredWhereTheyWereReckoned) {
    const Toy toy = toy_of(disc(6, 12));
    const PieceStudy study = fine_study(toy, Spacing::stacked);
    const auto found = std::ranges::find(study.checks(), CheckCode::corners, &Check::code);
    ASSERT_NE(found, study.checks().end());
    const double reckoned = std::get<Millimetres>(found->arguments[1]).value;
    const double seen = std::get<Millimetres>(as_seen(*found, study).arguments[1]).value;
    EXPECT_GT(seen, 1.5);
    EXPECT_LT(seen, reckoned);
}

}  // namespace
}  // namespace roundwright::test
