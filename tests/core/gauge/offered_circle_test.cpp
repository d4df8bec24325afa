#include "core/gauge/offered_circle.h"

#include <gtest/gtest.h>

#include "core/gauge/gauge_belief.h"
#include "core/gauge/usual_gauge.h"

namespace roundwright {
namespace {

TEST(OfferedCircle, IsExpectedAboutWhereTheGaugePutsIt) {
    const Gauge gauge = usual_gauge(3.5);
    const Range across = expected_across_mm(gauge);
    const double middle = 10 * gauge.round_height_mm;
    EXPECT_LT(across.low, 0.9 * middle);
    EXPECT_GT(across.high, 1.1 * middle);
    EXPECT_NEAR(across.low * across.high, middle * middle, 1e-6);
    EXPECT_EQ(expected_across_mm(Gauge{}), Range{});
}

TEST(OfferedCircle, NarrowsAnEstimateAndKeepsItsMiddle) {
    const Gauge gauge = usual_gauge(3.5);
    const auto then = gauge_with_circle(gauge);
    ASSERT_TRUE(then.has_value());
    EXPECT_NEAR(then->round_height_mm, gauge.round_height_mm, 1e-9);
    EXPECT_NEAR(then->stitch_width_mm, gauge.stitch_width_mm, 1e-9);
    EXPECT_LT(then->round_height_error_mm, gauge.round_height_error_mm / 3);
    EXPECT_LT(then->stitch_width_error_mm, gauge.stitch_width_error_mm / 2);
}

TEST(OfferedCircle, DoesNotHelpWhereTheSizeIsKnown) {
    const CircleGauge circle{.rounds = 5, .increases = 6, .across_mm = 50};
    EXPECT_EQ(gauge_with_circle(gauge_from(circle, 3.5).value()), std::nullopt);
    EXPECT_EQ(gauge_with_circle({5, 5, 0, 0}), std::nullopt);
}

}  // namespace
}  // namespace roundwright
