#include "app/shape/scale_bar.h"

#include <gtest/gtest.h>

namespace roundwright::app {
namespace {

TEST(ScaleBar, HasARoundLengthThatFits) {
    EXPECT_DOUBLE_EQ(scale_bar_length_mm(34, LengthUnit::millimetres), 20);
    EXPECT_DOUBLE_EQ(scale_bar_length_mm(50, LengthUnit::millimetres), 50);
    EXPECT_DOUBLE_EQ(scale_bar_length_mm(199, LengthUnit::millimetres), 100);
    EXPECT_DOUBLE_EQ(scale_bar_length_mm(30, LengthUnit::inches), 25.4);
    EXPECT_DOUBLE_EQ(scale_bar_length_mm(13, LengthUnit::inches), 12.7);
    EXPECT_DOUBLE_EQ(scale_bar_length_mm(0, LengthUnit::millimetres), 0);
}

}  // namespace
}  // namespace roundwright::app
