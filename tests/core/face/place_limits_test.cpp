#include <gtest/gtest.h>

#include "core/face/first_feature.h"
#include "core/face/place_feature.h"
#include "tests/core/face/known_shapes.h"

namespace roundwright::test {
namespace {

/// A ball of ten rounds, but stitches are only known of the first five.
class PlacesKnownInPart : public ::testing::Test {
  protected:
    FaceSurface surface{closed_ball(), sphere_shape(30, 10)};
    std::vector<int> counts = constant_counts(5, 24);

    [[nodiscard]] std::size_t places(FeatureKind kind, int round, int end_round = 0) const {
        Feature feature;
        feature.kind = kind;
        feature.pair = false;
        feature.round = round;
        feature.end_round = end_round;
        return place_feature(feature, surface, counts).starts.size();
    }
};

TEST_F(PlacesKnownInPart, EndWithTheLastRoundThatIsKnown) {
    EXPECT_EQ(places(FeatureKind::felt_disc, 0), 1U);
    EXPECT_EQ(places(FeatureKind::felt_disc, 4), 1U);
    EXPECT_EQ(places(FeatureKind::felt_disc, 5), 0U);
    EXPECT_EQ(places(FeatureKind::felt_disc, -1), 0U);
    EXPECT_EQ(places(FeatureKind::stitched_line, 4, 4), 1U);
    EXPECT_EQ(places(FeatureKind::stitched_line, 4, 5), 0U);
    EXPECT_EQ(places(FeatureKind::stitched_line, 4, -1), 0U);
    EXPECT_EQ(places(FeatureKind::felt_disc, 4, 5), 1U);  // only a line has an end
}

/// Gaps lie between two rounds: from the first to the one before the last.
TEST(PlaceLimits, AGapLiesBetweenTwoRounds) {
    const FaceSurface surface(closed_ball(), sphere_shape(30, 6));
    ASSERT_EQ(surface.loops(), 7);
    EXPECT_TRUE(has_gap(surface, 0));
    EXPECT_TRUE(has_gap(surface, 4));
    EXPECT_FALSE(has_gap(surface, 5));
    EXPECT_FALSE(has_gap(surface, -1));
}

TEST(PlaceLimits, WithoutTwoRoundsNothingMoves) {
    const FaceSurface surface(closed_ball(), sphere_shape(30, 6));
    Feature eye;
    eye.round = 3;
    for (const std::vector<int>& counts : {std::vector<int>{}, std::vector<int>{12}}) {
        EXPECT_EQ(nudged(eye, 1, 1, counts), eye);
        EXPECT_EQ(moved_to(eye, {20, 0.3}, surface, counts), eye);
    }
    EXPECT_EQ(nudged(eye, 1, 0, {12, 12}).round, 0);
    EXPECT_EQ(moved_to(eye, {20, 0.3}, surface, {12, 12}).round, 0);
    EXPECT_EQ(moved_to(eye, {20, 0.3}, FaceSurface(closed_ball(), Shape{}), {12, 12, 12}), eye);
}

TEST(PlaceLimits, APairIsOneStitchApartAtLeastAndAllButOneAtMost) {
    Feature eyes;
    eyes.round = 1;
    eyes.stitches_apart = 6;
    const std::vector<int> counts{10, 12, 12};
    EXPECT_EQ(nudged(eyes, 0, -5, counts).stitches_apart, 1);
    EXPECT_EQ(nudged(eyes, 0, -6, counts).stitches_apart, 1);
    EXPECT_EQ(nudged(eyes, 0, 5, counts).stitches_apart, 11);
    EXPECT_EQ(nudged(eyes, 0, 6, counts).stitches_apart, 11);
    EXPECT_EQ(nudged(eyes, -1, 9, counts).stitches_apart, 9);
    EXPECT_EQ(nudged(eyes, 0, 1, {1, 1, 1}).stitches_apart, 1);
}

/// Half stitches from the middle; a line's end keeps its way from its start.
TEST(PlaceLimits, ASingleFeatureSnapsToHalfStitches) {
    const FaceSurface surface(closed_ball(), sphere_shape(30, 6));
    const std::vector<int> counts = constant_counts(6, 12);
    const double stitch = 2 * std::numbers::pi / 12;
    Feature line;
    line.kind = FeatureKind::stitched_line;
    line.pair = false;
    line.round = 2;
    line.stitches_right = 1;
    line.end_round = 3;
    line.end_stitches_right = -0.5;
    const Feature moved = moved_to(line, {surface.along_of_loop(2), 2.3 * stitch}, surface, counts);
    EXPECT_EQ(moved.round, 1);
    EXPECT_EQ(moved.stitches_right, 2.5);
    EXPECT_EQ(moved.end_round, 2);
    EXPECT_EQ(moved.end_stitches_right, 1);
    const Feature nudged_line = nudged(line, 1, 2, counts);
    EXPECT_EQ(nudged_line.round, 3);
    EXPECT_EQ(nudged_line.end_round, 4);
    EXPECT_EQ(nudged_line.stitches_right, 3);
    EXPECT_EQ(nudged_line.end_stitches_right, 1.5);
    line.pair = true;
    const Feature pair = moved_to(line, {surface.along_of_loop(2), -1.3 * stitch}, surface, counts);
    EXPECT_EQ(pair.stitches_apart, 3);
    EXPECT_EQ(pair.end_stitches_right, -0.5);
}

/// The chord of 0.3, 0.45 and 0.62 of the loop's diameter, in stitches.
TEST(PlaceLimits, SpacingsAreSharesOfTheDiameter) {
    const std::vector<int> counts{60, 1};
    EXPECT_EQ(stitches_apart_for(EyeSpacing::close, 0, counts), 6);   // 34.9 degrees
    EXPECT_EQ(stitches_apart_for(EyeSpacing::middle, 0, counts), 9);  // 53.5
    EXPECT_EQ(stitches_apart_for(EyeSpacing::wide, 0, counts), 13);   // 76.6
    EXPECT_EQ(stitches_apart_for(EyeSpacing::close, 1, counts), 1);
}

/// Features that are begun with on a ball of 70 mm: 10 mm wide, the eyes above the middle.
TEST(PlaceLimits, FirstFeaturesOfAKnownBall) {
    const FaceSurface surface(closed_ball(), sphere_shape(35, 16));
    const std::vector<int> counts = constant_counts(16, 40);
    const Feature eyes = first_feature(FeatureKind::safety_eye, surface, counts);
    EXPECT_TRUE(eyes.pair);
    EXPECT_EQ(eyes.width_mm, 10);
    EXPECT_EQ(eyes.stitches_apart, 6);
    const Feature nose = first_feature(FeatureKind::safety_nose, surface, counts);
    EXPECT_FALSE(nose.pair);
    EXPECT_LT(nose.round, eyes.round);
    const Feature mouth = first_feature(FeatureKind::stitched_line, surface, counts);
    EXPECT_EQ(mouth.round, nose.round);
    EXPECT_EQ(mouth.end_round, mouth.round);
    EXPECT_EQ(mouth.height_mm, 1.5);
    EXPECT_EQ(mouth.end_stitches_right, 6);
    EXPECT_EQ(first_feature(FeatureKind::safety_eye, surface, {}).stitches_apart, Feature{}.stitches_apart);
}

}  // namespace
}  // namespace roundwright::test
