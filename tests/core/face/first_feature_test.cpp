#include "core/face/first_feature.h"

#include <algorithm>
#include <gtest/gtest.h>

#include "core/face/feature_fit.h"
#include "tests/core/face/known_shapes.h"

namespace roundwright {
namespace {

constexpr int rounds = 20;

FaceSurface ball(double radius_mm) { return {test::closed_ball(), test::sphere_shape(radius_mm, rounds)}; }

std::vector<int> counts() { return test::constant_counts(rounds, 36); }

double height_share(const Feature& feature, const FaceSurface& surface) {
    return surface.at({surface.along_of_loop(feature.round + 1), 0}).height_mm / surface.height_mm();
}

TEST(FirstFeature, EyesAreAPairALittleAboveTheMiddleInASizeThatIsSold) {
    for (const double radius : {15.0, 35.0, 60.0}) {
        const FaceSurface surface = ball(radius);
        const Feature eyes = first_feature(FeatureKind::safety_eye, surface, counts());
        EXPECT_TRUE(eyes.pair);
        EXPECT_NEAR(height_share(eyes, surface), 0.55, 0.05);
        EXPECT_NE(std::ranges::find(safety_eye_sizes_mm, eyes.width_mm), safety_eye_sizes_mm.end());
        EXPECT_NEAR(eyes.width_mm, 2 * radius / 7, 1.5);
        EXPECT_TRUE(overlaps({eyes}, surface, counts()).empty());
    }
}

TEST(FirstFeature, NoseAndMouthAreBelowTheEyes) {
    const FaceSurface surface = ball(35);
    const Feature eyes = first_feature(FeatureKind::safety_eye, surface, counts());
    const Feature nose = first_feature(FeatureKind::safety_nose, surface, counts());
    EXPECT_FALSE(nose.pair);
    EXPECT_LT(height_share(nose, surface), height_share(eyes, surface));
    const Feature mouth = first_feature(FeatureKind::stitched_line, surface, counts());
    EXPECT_EQ(mouth.end_round, mouth.round);
    EXPECT_GT(mouth.end_stitches_right, mouth.stitches_apart / 2.0);
}

TEST(FirstFeature, APieceWithoutAShapeTakesOneAllTheSame) {
    const FaceSurface none(Piece{}, Shape{});
    const Feature eyes = first_feature(FeatureKind::safety_eye, none, {});
    EXPECT_EQ(eyes.round, 0);
    EXPECT_GT(eyes.width_mm, 0);
}

}  // namespace
}  // namespace roundwright
