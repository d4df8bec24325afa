#include "core/materials/working_time.h"

#include <gtest/gtest.h>

namespace roundwright {
namespace {

TEST(WorkingTime, TheMakersPaceRules) {
    Making making;
    making.stitches_per_minute = 20;
    const Estimate minutes = working_minutes(1200, making);  // a ball of n = 10 has 1200 stitches
    EXPECT_DOUBLE_EQ(minutes.likely, 60);
    EXPECT_DOUBLE_EQ(minutes.low, 60 / 1.15);
    EXPECT_DOUBLE_EQ(minutes.high, 60 / 0.85);
}

TEST(WorkingTime, AnImpossiblePaceIsNotUsed) {
    Making making;
    making.stitches_per_minute = 0;
    EXPECT_EQ(working_minutes(180, making), working_minutes(180, {}));
    EXPECT_DOUBLE_EQ(working_minutes(180, {}).likely, 10);  // our own usual pace, 18 a minute
}

}  // namespace
}  // namespace roundwright
