#include "core/face/small_parts.h"

#include <cmath>
#include <gtest/gtest.h>

namespace roundwright {
namespace {

// 16 CFR 1501.4: inner diameter 1.25 in, depth 1 in to 2.25 in; inch figures govern.
constexpr double inch = 25.4;
constexpr double off = 0.05;

TEST(SmallParts, ADiscIsJustInsideOrOutsideTheDiameter) {
    EXPECT_TRUE(fits_small_parts_cylinder({1.25 * inch - off, 1.25 * inch - off, 1}));
    EXPECT_FALSE(fits_small_parts_cylinder({1.25 * inch + off, 1.25 * inch + off, 1}));
}

TEST(SmallParts, AFullWidthPlugIsLimitedByTheShallowDepth) {
    EXPECT_TRUE(fits_small_parts_cylinder({1.25 * inch - off, 1.25 * inch - off, 1.0 * inch - off}));
    EXPECT_FALSE(fits_small_parts_cylinder({1.25 * inch - off, 1.25 * inch - off, 1.0 * inch + 3 * off}));
}

TEST(SmallParts, AThinRodIsLimitedByTheDiagonal) {
    EXPECT_TRUE(fits_small_parts_cylinder({0.2, 0.2, 2.25 * inch - 0.5}));
    // From the deepest point to the rim opposite.
    const double diagonal = std::hypot(2.25, 1.25) * inch;
    EXPECT_TRUE(fits_small_parts_cylinder({0.2, 0.2, diagonal - 0.8}));
    EXPECT_FALSE(fits_small_parts_cylinder({0.2, 0.2, diagonal + 0.5}));
}

TEST(SmallParts, AnOvalMayStandOnEdge) {
    // Too long to lie across, but shorter on edge than the cylinder is deep.
    EXPECT_TRUE(fits_small_parts_cylinder({20, 40, 1}));
    EXPECT_FALSE(fits_small_parts_cylinder({33, 60, 1}));
}

TEST(SmallParts, EverySafetyEyeIsASmallPart) {
    for (double mm : {4, 6, 8, 10, 12, 15, 18, 20, 24, 30}) {
        Feature eye;
        eye.width_mm = eye.height_mm = mm;
        EXPECT_TRUE(fits_small_parts_cylinder(rigid_part(eye))) << mm;
    }
    EXPECT_TRUE(has_rigid_part(FeatureKind::felt_disc));
    EXPECT_FALSE(has_rigid_part(FeatureKind::embroidered_eye));
    EXPECT_FALSE(has_rigid_part(FeatureKind::stitched_line));
}

}  // namespace
}  // namespace roundwright
