#include "core/face/feature_fit.h"

#include <gtest/gtest.h>

#include "tests/core/face/known_shapes.h"

namespace roundwright {
namespace {

using test::closed_ball;

// Sagitta of a shallow arc: a^2 / 2R.
TEST(FeatureFit, WasherGapOnASphereIsTheSagitta) {
    const FaceSurface sphere(closed_ball(), test::sphere_shape(40, 59));
    const SurfacePoint equator = sphere.at({sphere.along_of_loop(30), 0});
    EXPECT_NEAR(washer_gap_mm(16, equator), 8.0 * 8.0 / (2 * 40), 0.02);
}

TEST(FeatureFit, OverlapsOnEachSideOfTouching) {
    const FaceSurface sphere(closed_ball(), test::sphere_shape(40, 15));
    const auto counts = test::constant_counts(15, 36);
    Feature eyes;
    eyes.round = 7;
    eyes.stitches_apart = 2;  // 13.89 mm apart
    eyes.width_mm = eyes.height_mm = 13;
    eyes.washer_mm = 13.8;
    EXPECT_TRUE(overlaps({eyes}, sphere, counts).empty());
    eyes.washer_mm = 14;
    ASSERT_EQ(overlaps({eyes}, sphere, counts).size(), 1u);
    EXPECT_TRUE(overlaps({eyes}, sphere, counts)[0].washers);
    eyes.width_mm = 14;
    EXPECT_FALSE(overlaps({eyes}, sphere, counts)[0].washers);
}

// Of a ball every normal section is a great circle, by Meusnier wherever the loop is.
TEST(FeatureFit, RoomAcrossABallIsItsWidthEverywhere) {
    const FaceSurface sphere(closed_ball(), test::sphere_shape(40, 59));
    for (const int loop : {2, 5, 15, 30, 50})
        EXPECT_NEAR(room_across_mm(sphere.at({sphere.along_of_loop(loop), 0}), sphere.width_mm()), 80, 0.5);
}

TEST(FeatureFit, AnEyeOnADiscOfFeltDoesNotTouchIt) {
    const FaceSurface sphere(closed_ball(), test::sphere_shape(40, 15));
    const auto counts = test::constant_counts(15, 36);
    Feature ring;
    ring.kind = FeatureKind::felt_disc;
    ring.round = 7;
    ring.stitches_apart = 8;
    ring.width_mm = ring.height_mm = 12;
    Feature eyes = ring;
    eyes.kind = FeatureKind::safety_eye;
    eyes.width_mm = eyes.height_mm = 8;
    EXPECT_TRUE(overlaps({ring, eyes}, sphere, counts).empty());
    eyes.stitches_apart = 6;  // over the rim
    EXPECT_EQ(overlaps({ring, eyes}, sphere, counts).size(), 1u);
}

}  // namespace
}  // namespace roundwright
