#include "render/wording/pattern/round_remarks.h"

#include <gtest/gtest.h>

#include "tests/render/pages/demo_toys.h"

namespace roundwright::render {
namespace {

using testing::ball;

TEST(RoundRemarks, StuffingIsAskedForWhileItStillGoesIn) {
    const Toy toy = ball(8);
    const PieceStudy study = study_piece(toy, 0);
    const std::vector<RoundRemark> remarks = round_remarks(toy.pieces[0], study, Terms::us);
    ASSERT_FALSE(remarks.empty());
    EXPECT_TRUE(remarks.front().text.contains(QStringLiteral("stuff")));
    EXPECT_GE(remarks.front().after, 15);  // not before the last of the even rounds
    EXPECT_LT(remarks.front().after, 22);
}

TEST(RoundRemarks, EyesComeInAfterTheirRoundAndBeforeTheEnd) {
    Toy toy = ball(8);
    Feature eyes;
    eyes.round = 12;
    eyes.stitches_apart = 9;
    toy.pieces[0].features = {eyes};
    const std::vector<RoundRemark> remarks = round_remarks(toy.pieces[0], study_piece(toy, 0), Terms::us);
    ASSERT_FALSE(remarks.empty());
    EXPECT_TRUE(remarks.front().text.contains(
        QStringLiteral("between rounds 13 and 14, with 9 stitches between them")))
        << remarks.front().text.toStdString();
    EXPECT_GE(remarks.front().after, 13);
}

TEST(RoundRemarks, NothingToDoInAFlatPiece) {
    Toy toy = ball(4);
    toy.pieces[0].area_stretch = 0;
    EXPECT_TRUE(round_remarks(toy.pieces[0], study_piece(toy, 0), Terms::us).empty());
}

}  // namespace
}  // namespace roundwright::render
