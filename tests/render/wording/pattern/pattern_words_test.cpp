#include "render/wording/pattern/pattern_words.h"

#include <gtest/gtest.h>

namespace roundwright::render {
namespace {

TEST(PatternWords, LengthsInWholeMillimetresOrEighths) {
    EXPECT_EQ(length_words(84.4, LengthUnit::millimetres).toStdString(), "84 mm");
    EXPECT_EQ(length_words(3.25 * 25.4, LengthUnit::inches).toStdString(), "3¼ in");
    EXPECT_EQ(length_words(2 * 25.4, LengthUnit::inches).toStdString(), "2 in");
    EXPECT_EQ(length_words(0.375 * 25.4, LengthUnit::inches).toStdString(), "⅜ in");
    EXPECT_EQ(length_words(2.99 * 25.4, LengthUnit::inches).toStdString(), "3 in");
}

TEST(PatternWords, ARangeShowsOnlyWhereItIsOne) {
    EXPECT_EQ(length_words(Estimate{84, 80, 89}, LengthUnit::millimetres).toStdString(), "84 mm (80 to 89)");
    EXPECT_EQ(length_words(Estimate{84, 83.9, 84.2}, LengthUnit::millimetres).toStdString(), "84 mm");
}

TEST(PatternWords, YarnIsRoundedUp) {
    EXPECT_EQ(yarn_to_buy_words(12.1, LengthUnit::millimetres).toStdString(), "13 m");
    EXPECT_EQ(yarn_to_buy_words(0.9144 * 20, LengthUnit::inches).toStdString(),
              "20 yd");  // 1 yd = 0.9144 m exactly
}

TEST(PatternWords, WeightsWithoutFalseDecimals) {
    EXPECT_EQ(weight_words(Estimate{6, 4.6, 7.4}, LengthUnit::millimetres).toStdString(), "4.5 to 7.5 g");
    EXPECT_EQ(weight_words(Estimate{25.4, 25.3, 25.4}, LengthUnit::millimetres).toStdString(), "25 g");
}

// 1 oz = 28.349523125 g exactly (international yard and pound agreement, 1959).
TEST(PatternWords, OuncesWithGramsBesideThem) {
    const Estimate ounce{28.349523125, 28.349523125, 56.69904625};
    EXPECT_EQ(weight_words(ounce, LengthUnit::inches).toStdString(),
              "1.0 to 2.0 oz (28\u00A0to\u00A057\u00A0g)");
}

TEST(PatternWords, LittleWeighsSomethingStill) {
    EXPECT_EQ(weight_words(Estimate{0.2, 0.1, 0.4}, LengthUnit::millimetres).toStdString(), "up to 0.5 g");
    EXPECT_EQ(weight_words(Estimate{0.2, 0.1, 0.2}, LengthUnit::millimetres).toStdString(), "up to 0.5 g");
    EXPECT_EQ(weight_words(Estimate{1, 0.5, 1.2}, LengthUnit::inches).toStdString(), "0.5 to 1 g");
    EXPECT_EQ(weight_words(Estimate{2, 1, 3}, LengthUnit::inches).toStdString(),
              "up to 0.1 oz (1\u00A0to\u00A03\u00A0g)");
}

TEST(PatternWords, HooksByMillimetresWithTheTradesNames) {
    // Craft Yarn Council: 3.5 mm is E-4; UK 9.
    EXPECT_EQ(hook_with_names(3.5).toStdString(), "3.5 mm (US E-4, UK 9)");
    EXPECT_EQ(hook_with_names(3.4).toStdString(), "3.4 mm");
}

TEST(PatternWords, Times) {
    EXPECT_EQ(time_words(0.2).toStdString(), "1 min");
    EXPECT_EQ(time_words(59.4).toStdString(), "59 min");
    EXPECT_EQ(time_words(83).toStdString(), "1 h 25 min");
    EXPECT_EQ(time_words(121).toStdString(), "2 h");
}

TEST(PatternWords, SwatchesOfTenCentimetresOrFourInches) {
    EXPECT_DOUBLE_EQ(stitches_in_swatch(5, LengthUnit::millimetres), 20);
    EXPECT_DOUBLE_EQ(stitches_in_swatch(5.08, LengthUnit::inches), 20);
}

}  // namespace
}  // namespace roundwright::render
