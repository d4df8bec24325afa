#include "render/wording/length_text.h"

#include <gtest/gtest.h>
#include <limits>

namespace roundwright {
namespace {

TEST(LengthText, RoundsToWholeMillimetres) {
    EXPECT_EQ(length_text(83.6, LengthUnit::millimetres), QStringLiteral("84\u00A0mm"));
    EXPECT_EQ(length_range_text(79.7, 89.2, LengthUnit::millimetres), QStringLiteral("80\u201389"));
    EXPECT_EQ(length_range_text(79.9, 80.1, LengthUnit::millimetres), QStringLiteral("80"));
}

// 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
TEST(LengthText, GivesInchesInEighths) {
    EXPECT_EQ(length_text(25.4, LengthUnit::inches), QStringLiteral("1\u00A0in"));
    EXPECT_EQ(length_text(85.725, LengthUnit::inches), QStringLiteral("3⅜\u00A0in"));
    EXPECT_EQ(length_text(12.7, LengthUnit::inches), QStringLiteral("½\u00A0in"));
    EXPECT_EQ(length_text(0.2, LengthUnit::inches), QStringLiteral("0\u00A0in"));
}

TEST(LengthText, HasAWordForNoLength) {
    EXPECT_EQ(length_number(std::numeric_limits<double>::quiet_NaN(), LengthUnit::millimetres),
              QStringLiteral("–"));
}

}  // namespace
}  // namespace roundwright
