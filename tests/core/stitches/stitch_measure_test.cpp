#include "core/stitches/stitch_measure.h"

#include <gtest/gtest.h>

namespace roundwright {
namespace {

// Common practice: the height of a single crochet is half that of a double; half doubles stand between,
// trebles are three high.
TEST(StitchMeasure, HeightsAreThoseOfCommonPractice) {
    EXPECT_EQ(height_in_sc(StitchKind::single_crochet), 1.0);
    EXPECT_EQ(height_in_sc(StitchKind::half_double_crochet), 1.5);
    EXPECT_EQ(height_in_sc(StitchKind::double_crochet), 2.0);
    EXPECT_EQ(height_in_sc(StitchKind::treble_crochet), 3.0);
    EXPECT_LT(height_in_sc(StitchKind::slip_stitch), 0.5);
}

TEST(StitchMeasure, EveryStitchThatLeavesALoopIsOneLoopWide) {
    for (int kind = 0; kind <= static_cast<int>(StitchKind::skip); ++kind) {
        const Stitch stitch{.kind = static_cast<StitchKind>(kind)};
        EXPECT_EQ(width_in_sc(stitch.kind), loops_left(stitch)) << kind;
    }
}

// Published measurement: a half double takes about 1.5 times the yarn of a single crochet.
TEST(StitchMeasure, YarnGrowsWithHeightAndFeet) {
    EXPECT_EQ(yarn_in_sc(StitchKind::half_double_crochet), 1.5);
    EXPECT_GT(yarn_in_sc(StitchKind::treble_crochet), yarn_in_sc(StitchKind::double_crochet));
    const Stitch decrease{.feet = 2};
    EXPECT_GT(yarn_in_sc(decrease), yarn_in_sc(StitchKind::single_crochet));
    EXPECT_LT(yarn_in_sc(decrease), 2 * yarn_in_sc(StitchKind::single_crochet));
    EXPECT_EQ(yarn_in_sc(Stitch{.kind = StitchKind::skip, .feet = 3}), 0);
}

}  // namespace
}  // namespace roundwright
