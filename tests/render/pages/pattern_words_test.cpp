#include "render/pages/pattern_words.h"

#include <gtest/gtest.h>

namespace roundwright::render {
namespace {

TEST(PatternWords, LengthsInWholeMillimetresOrEighths) {
    EXPECT_EQ(length_words(84.4, Units::mm).toStdString(), "84 mm");
    EXPECT_EQ(length_words(3.25 * 25.4, Units::inch).toStdString(), "3 1/4 in");
    EXPECT_EQ(length_words(2 * 25.4, Units::inch).toStdString(), "2 in");
    EXPECT_EQ(length_words(0.375 * 25.4, Units::inch).toStdString(), "3/8 in");
    EXPECT_EQ(length_words(2.99 * 25.4, Units::inch).toStdString(), "3 in");
}

TEST(PatternWords, ARangeShowsOnlyWhereItIsOne) {
    EXPECT_EQ(length_words(Estimate{84, 80, 89}, Units::mm).toStdString(), "84 mm (80 to 89)");
    EXPECT_EQ(length_words(Estimate{84, 83.9, 84.2}, Units::mm).toStdString(), "84 mm");
}

TEST(PatternWords, YarnIsRoundedUp) {
    EXPECT_EQ(yarn_length_words(12.1, Units::mm).toStdString(), "13 m");
    EXPECT_EQ(yarn_length_words(0.9144 * 20, Units::inch).toStdString(), "20 yd");  // 1 yd = 0.9144 m exactly
}

TEST(PatternWords, WeightsWithoutFalseDecimals) {
    EXPECT_EQ(weight_words(Estimate{6, 4.6, 7.4}, Units::mm).toStdString(), "4.5 to 7.5 g");
    EXPECT_EQ(weight_words(25.4, Units::mm).toStdString(), "25 g");
    EXPECT_EQ(weight_words(28.349523125, Units::inch).toStdString(), "1.0 oz (28 g)");  // 1 oz, exactly
}

TEST(PatternWords, HooksByMillimetresWithTheTradesNames) {
    // Craft Yarn Council: 3.5 mm is E-4; UK 9.
    EXPECT_EQ(hook_words(3.5).toStdString(), "3.5 mm (US E-4, UK 9)");
    EXPECT_EQ(hook_words(3.4).toStdString(), "3.4 mm");
}

TEST(PatternWords, Times) {
    EXPECT_EQ(time_words(0.2).toStdString(), "1 min");
    EXPECT_EQ(time_words(59.4).toStdString(), "59 min");
    EXPECT_EQ(time_words(83).toStdString(), "1 h 25 min");
    EXPECT_EQ(time_words(121).toStdString(), "2 h");
}

TEST(PatternWords, SwatchesOfTenCentimetresOrFourInches) {
    EXPECT_DOUBLE_EQ(stitches_in_swatch(5, Units::mm), 20);
    EXPECT_DOUBLE_EQ(stitches_in_swatch(5.08, Units::inch), 20);
}

}  // namespace
}  // namespace roundwright::render
