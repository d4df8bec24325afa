#include "core/gauge/usual_gauge.h"

#include <cmath>
#include <gtest/gtest.h>

namespace roundwright {
namespace {

// Common practice: a toy's hook is 0.5 to 1.5 mm thinner than the label of its yarn says.
TEST(UsualGauge, WeightOfTheHook) {
    EXPECT_EQ(usual_weight(1.5), YarnWeight::super_fine);
    EXPECT_EQ(usual_weight(2.5), YarnWeight::fine);
    EXPECT_EQ(usual_weight(3.5), YarnWeight::light);
    EXPECT_EQ(usual_weight(5), YarnWeight::medium);
    EXPECT_EQ(usual_weight(7), YarnWeight::bulky);
    EXPECT_EQ(usual_weight(12), YarnWeight::super_bulky);
    EXPECT_EQ(usual_weight(20), YarnWeight::jumbo);
}

TEST(UsualGauge, AHookAndTheWeightThatItIsUsualForGoTogether) {
    EXPECT_EQ(usual_hook_mm(YarnWeight::light), 4.0);  // labelled 4.5 to 5.5
    for (const YarnStandard& standard : yarn_standards()) {
        if (standard.weight == YarnWeight::lace) continue;
        EXPECT_EQ(usual_weight(usual_hook_mm(standard.weight)), standard.weight) << standard.name;
    }
}

TEST(UsualGauge, IsAlwaysUsable) {
    for (const double hook : {-1.0, 0.0, 1e-9, 0.5, 3.5, 16.0, 1e9, std::nan("")}) {
        const Gauge gauge = usual_gauge(hook);
        EXPECT_GT(gauge.stitch_width_mm, 0) << hook;
        EXPECT_LT(gauge.stitch_width_mm, 100) << hook;
        EXPECT_GT(gauge.round_height_mm, 0) << hook;
        EXPECT_GT(gauge.stitch_width_error_mm, 0) << hook;
    }
}

}  // namespace
}  // namespace roundwright
