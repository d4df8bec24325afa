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

// The table of the header, stitch by stitch: common practice, and our own estimates of yarn.
TEST(StitchMeasure, EveryStitchHasItsHeightAndYarn) {
    struct Row {
        StitchKind kind;
        double height, width, yarn;
    };
    for (const Row& row :
         {Row{StitchKind::chain, 0, 1, 0.4}, Row{StitchKind::slip_stitch, 0.25, 1, 0.6},
          Row{StitchKind::single_crochet, 1, 1, 1}, Row{StitchKind::half_double_crochet, 1.5, 1, 1.5},
          Row{StitchKind::double_crochet, 2, 1, 2}, Row{StitchKind::treble_crochet, 3, 1, 2.6},
          Row{StitchKind::bobble, 1, 1, 7}, Row{StitchKind::skip, 0, 0, 0}}) {
        EXPECT_EQ(height_in_sc(row.kind), row.height);
        EXPECT_EQ(width_in_sc(row.kind), row.width);
        EXPECT_EQ(yarn_in_sc(row.kind), row.yarn);
    }
}

TEST(StitchMeasure, EveryFootMoreTakesTheSame) {
    for (std::uint16_t feet = 1; feet < 9; ++feet)
        EXPECT_DOUBLE_EQ(yarn_in_sc(Stitch{.feet = feet}), 1 + 0.4 * (feet - 1)) << feet;
    EXPECT_EQ(yarn_in_sc(Stitch{.kind = StitchKind::chain, .feet = 0}), 0.4);
}

}  // namespace
}  // namespace roundwright
