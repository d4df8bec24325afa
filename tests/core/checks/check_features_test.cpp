#include <gtest/gtest.h>
#include <numbers>

#include "core/face/feature_fit.h"
#include "core/gauge/fabric_thickness.h"
#include "tests/core/checks/checked_piece.h"

namespace roundwright {
namespace {

using test::ball;
using test::checks_of;
using test::named;
using test::stuffed_toy_of;

/// A ball of 6 rounds up, 6 even, 6 down, with one pair of eyes on it.
Toy with_eyes(const Feature& eyes) {
    Toy toy = stuffed_toy_of(ball(6));
    toy.pieces[0].features.push_back(eyes);
    return toy;
}

Feature eyes_after(int round, double mm = 8) {
    Feature eyes;
    eyes.round = round;
    eyes.width_mm = eyes.height_mm = mm;
    return eyes;
}

TEST(CheckFeatures, EyesWellPlacedHaveNothingToMend) {
    EXPECT_TRUE(checks_of(with_eyes(eyes_after(8))).empty()) << named(checks_of(with_eyes(eyes_after(8))));
}

// Openings at w = 5 mm: 30, 24, 18, 12, 6 stitches are 47.7, 38.2, 28.6, 19.1, 9.5 mm.
TEST(CheckFeatures, WasherTooLateOnEachSideOfTheOpening) {
    // The gap is there once round 16 is worked: 12 stitches, 19.1 mm less fabric of 1.75, 17.35 mm.
    Feature eyes = eyes_after(14, 6);
    eyes.washer_mm = 17.3;
    EXPECT_TRUE(checks_of(with_eyes(eyes), CheckCode::washer_too_late).empty());
    eyes.washer_mm = 17.4;
    const auto late = checks_of(with_eyes(eyes), CheckCode::washer_too_late);
    ASSERT_EQ(late.size(), 1u);
    EXPECT_EQ(late[0].severity, Severity::error);
    EXPECT_EQ(late[0].round, 14);
    EXPECT_NEAR(std::get<Millimetres>(late[0].arguments[2]).value,
                12 * 5 / std::numbers::pi - 5 * fabric_thickness_in_stitches, 1e-9);
}

TEST(CheckFeatures, EveryCureOfALateWasherCures) {
    Feature eyes = eyes_after(14, 6);
    eyes.washer_mm = 19.2;
    Toy toy = with_eyes(eyes);
    const auto late = checks_of(toy, CheckCode::washer_too_late);
    ASSERT_EQ(late.size(), 1u);
    ASSERT_EQ(late[0].cures.size(), 2u);
    EXPECT_EQ(late[0].cures[0].kind, CureKind::move_feature);
    EXPECT_EQ(late[0].cures[1].kind, CureKind::embroider);
    for (const Cure& cure : late[0].cures) {
        Toy mended = toy;
        mended.pieces[0] = cured_piece(mended.pieces[0], cure);
        EXPECT_TRUE(checks_of(mended, CheckCode::washer_too_late).empty());
    }
}

TEST(CheckFeatures, AWasherRocksOnceItsGapIsTooLarge) {
    // The ball's radius is about 29 mm: a washer of diameter d leaves d^2 / 8R, which passes 1.5 mm near d
    // = 18.6.
    EXPECT_TRUE(checks_of(with_eyes(eyes_after(8, 12)), CheckCode::washer_rocks).empty());
    Feature large = eyes_after(8, 14);
    large.stitches_apart = 12;
    large.washer_mm = 24;
    EXPECT_EQ(checks_of(with_eyes(large), CheckCode::washer_rocks).size(), 1u);
}

TEST(CheckFeatures, APairThatTouchesIsSpacedUntilItClears) {
    Feature eyes = eyes_after(8, 10);
    eyes.stitches_apart = 2;
    const Toy toy = with_eyes(eyes);
    const auto touching = checks_of(toy, CheckCode::features_touch);
    ASSERT_EQ(touching.size(), 1u);
    EXPECT_EQ(touching[0].features, toy.pieces[0].features) << "a check says which it is about";
    ASSERT_EQ(touching[0].cures.size(), 1u);
    Toy mended = toy;
    mended.pieces[0] = cured_piece(mended.pieces[0], touching[0].cures[0]);
    EXPECT_TRUE(checks_of(mended, CheckCode::features_touch).empty());
    EXPECT_GT(mended.pieces[0].features[0].stitches_apart, 2);
}

TEST(CheckFeatures, TooLargeForItsPlaceOnEachSideOfTheLimit) {
    Feature nose = eyes_after(0, 4);  // over round 1: six stitches
    nose.kind = FeatureKind::felt_disc;
    nose.pair = false;
    const Toy toy = with_eyes(nose);
    const FaceSurface surface(toy.pieces[0], study_piece(toy, 0).revolved());
    const double across = room_across_mm(surface.at({surface.along_of_loop(1), 0}), surface.width_mm());
    nose.width_mm = nose.height_mm = most_share_of_loop * across - 0.05;
    EXPECT_TRUE(checks_of(with_eyes(nose), CheckCode::feature_too_large).empty());
    nose.width_mm = nose.height_mm = most_share_of_loop * across + 0.05;
    EXPECT_EQ(checks_of(with_eyes(nose), CheckCode::feature_too_large).size(), 1u);
}

TEST(CheckFeatures, AFeatureWhoseRoundsAreGoneIsNamedAndCanBeTakenOff) {
    const Toy toy = with_eyes(eyes_after(40));
    const auto lost = checks_of(toy, CheckCode::feature_lost);
    ASSERT_EQ(lost.size(), 1u);
    Toy mended = toy;
    mended.pieces[0] = cured_piece(mended.pieces[0], lost[0].cures.at(0));
    EXPECT_TRUE(mended.pieces[0].features.empty());
}

}  // namespace
}  // namespace roundwright
