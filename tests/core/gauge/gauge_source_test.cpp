#include "core/gauge/gauge_source.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>
#include <numbers>

namespace roundwright {
namespace {

constexpr double tiny = 1e-9;

Gauge must(const GaugeSource& source, double hook_mm) {
    const std::optional<Gauge> gauge = gauge_from(source, hook_mm);
    EXPECT_TRUE(gauge.has_value());
    return gauge.value_or(Gauge{});
}

// A published swatch: 20 x 20 single crochets, 6.25 x 5.75 in with a 6 mm hook: w 7.94 mm, h 7.30 mm, h/w
// 0.92.
TEST(GaugeFromSwatch, PublishedSwatch) {
    const Gauge gauge = must(SwatchGauge{20, 6.25 * 25.4, 20, 5.75 * 25.4, true, 1, 6}, 6);
    EXPECT_NEAR(gauge.stitch_width_mm, 7.94, 0.005);
    EXPECT_NEAR(gauge.round_height_mm, 7.30, 0.005);
    EXPECT_NEAR(gauge.round_height_mm / gauge.stitch_width_mm, 0.92, 0.001);
}

// Arithmetic: 1 mm on 20 stitches is 0.05 mm a stitch.
TEST(GaugeFromSwatch, MeasuringErrorIsSharedByTheStitches) {
    const Gauge gauge = must(SwatchGauge{20, 100, 10, 50, false, 1, 0}, 3.5);
    EXPECT_NEAR(gauge.stitch_width_error_mm, 0.05, tiny);
    EXPECT_NEAR(gauge.round_height_error_mm, 0.1, tiny);
}

// Common practice: rows are not worked like rounds, so their height says less about a round's.
TEST(GaugeFromSwatch, RowsMakeTheHeightLessCertainAndLeaveTheWidth) {
    SwatchGauge swatch{20, 100, 20, 100, false, 1, 0};
    const Gauge rounds = must(swatch, 3.5);
    swatch.worked_in_rows = true;
    const Gauge rows = must(swatch, 3.5);
    EXPECT_NEAR(rows.round_height_error_mm - rounds.round_height_error_mm, 0.5, tiny);  // a tenth of 5 mm
    EXPECT_EQ(rows.stitch_width_error_mm, rounds.stitch_width_error_mm);
    EXPECT_EQ(rows.round_height_mm, rounds.round_height_mm);
}

TEST(GaugeFromSwatch, AnotherHookScalesAndAddsUncertainty) {
    SwatchGauge swatch{20, 100, 20, 90, false, 1, 4};
    const Gauge same = must(swatch, 4);
    const Gauge thicker = must(swatch, 5);
    EXPECT_NEAR(thicker.stitch_width_mm, same.stitch_width_mm * 1.25, tiny);
    EXPECT_NEAR(thicker.round_height_mm, same.round_height_mm * 1.25, tiny);
    EXPECT_NEAR(thicker.stitch_width_error_mm, 0.05 * 1.25 + 5 * 0.125, tiny);
    swatch.hook_mm = 0;
    EXPECT_EQ(must(swatch, 5), same);
}

// One figure gives both sizes of an estimate, so its error is common; a swatch is measured both ways.
TEST(GaugeErrors, AreCommonWhereOneFigureGivesBoth) {
    EXPECT_EQ(must(SwatchGauge{20, 100, 20, 90, false, 1, 0}, 4).error_correlation, 0);
    EXPECT_GT(must(SwatchGauge{20, 100, 20, 90, false, 0, 3}, 4).error_correlation,
              0.999);  // the hook's alone
    const Gauge estimate = must(EstimatedGauge{YarnWeight::light}, 4);
    EXPECT_NEAR(estimate.error_correlation, estimate.stitch_width_error_mm / estimate.round_height_error_mm,
                tiny);
    const Gauge circle = must(CircleGauge{5, 6, 50, CircleLie::flat, 1, 0}, 4);
    // The tape: 0.1 mm of height, 0.1 x 2 pi / 6 of width; half an increase besides.
    EXPECT_NEAR(circle.error_correlation, 0.1 * std::numbers::pi / 3 / circle.stitch_width_error_mm, tiny);
}

// Gauge circle, common in toy books: 5 rounds, 30 stitches, 2 in across with a 3.5 to 3.75 mm hook (common
// practice).
TEST(GaugeFromCircle, FlatCircleGivesBoth) {
    const Gauge gauge = must(CircleGauge{5, 6, 50.8, CircleLie::flat, 1, 0}, 3.5);
    EXPECT_NEAR(gauge.round_height_mm, 5.08, tiny);
    // Flat growth: k w = 2 pi h.
    EXPECT_NEAR(6 * gauge.stitch_width_mm, 2 * std::numbers::pi * gauge.round_height_mm, tiny);
    EXPECT_NEAR(gauge.round_height_error_mm, 0.1, tiny);
    // Half an increase of six, and the measure.
    EXPECT_NEAR(gauge.stitch_width_error_mm / gauge.stitch_width_mm, 0.5 / 6 + 0.1 / 5.08, tiny);
}

// A circle that cups has too few stitches for its width, one that ruffles too many: narrower and wider than
// flat.
TEST(GaugeFromCircle, UnevenCircleGivesTheSideAndALargerError) {
    const Gauge flat = must(CircleGauge{5, 6, 50, CircleLie::flat, 1, 0}, 3.5);
    const Gauge cups = must(CircleGauge{5, 6, 50, CircleLie::cups, 1, 0}, 3.5);
    const Gauge ruffles = must(CircleGauge{5, 6, 50, CircleLie::ruffles, 1, 0}, 3.5);
    EXPECT_LT(cups.stitch_width_mm, flat.stitch_width_mm);
    EXPECT_GT(ruffles.stitch_width_mm, flat.stitch_width_mm);
    for (const Gauge& uneven : {cups, ruffles}) {
        EXPECT_GT(uneven.stitch_width_error_mm, flat.stitch_width_error_mm);
        EXPECT_GT(uneven.round_height_error_mm, flat.round_height_error_mm);
        EXPECT_EQ(uneven.round_height_mm, flat.round_height_mm);
        EXPECT_GE(uneven.stitch_width_mm + uneven.stitch_width_error_mm, flat.stitch_width_mm - tiny);
        EXPECT_LE(uneven.stitch_width_mm - uneven.stitch_width_error_mm, flat.stitch_width_mm + tiny);
    }
}

// Craft Yarn Council's www.YarnStandards.com: light yarn 12 to 17 sc per 4 in with a 4.5 to 5.5 mm hook.
TEST(GaugeFromEstimate, MiddleOfTheTableScaledByTheHook) {
    const Gauge gauge = must(EstimatedGauge{YarnWeight::light}, 3.5);
    EXPECT_NEAR(gauge.stitch_width_mm, 101.6 / 14.5 * 3.5 / 5, tiny);
    EXPECT_EQ(gauge.round_height_mm, gauge.stitch_width_mm);
    EXPECT_NEAR(gauge.stitch_width_error_mm, (101.6 / 12 - 101.6 / 17) / 2 * 3.5 / 5, tiny);
    EXPECT_GT(gauge.round_height_error_mm, gauge.stitch_width_error_mm);
}

// The table gives lace in double crochet, so it has no estimate; jumbo as "5 and fewer" with "16 mm and up".
TEST(GaugeFromEstimate, EndsOfTheTable) {
    EXPECT_FALSE(gauge_from(EstimatedGauge{YarnWeight::lace}, 2));
    const Gauge jumbo = must(EstimatedGauge{YarnWeight::jumbo}, 16);
    EXPECT_NEAR(jumbo.stitch_width_mm, 101.6 / 5, tiny);
    EXPECT_GT(jumbo.stitch_width_error_mm, 0.2 * jumbo.stitch_width_mm);
}

TEST(GaugeFromGiven, IsTakenAsItIs) {
    const Gauge gauge{5.1, 4.9, 0.2, 0.3};
    EXPECT_EQ(must(GivenGauge{gauge}, 3.5), gauge);
}

TEST(GaugeFrom, UnusableMeasuresGiveNothing) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinite = std::numeric_limits<double>::infinity();
    const std::vector<GaugeSource> unusable{
        std::monostate{},
        SwatchGauge{0, 100, 20, 100, false, 1, 0},
        SwatchGauge{20, -100, 20, 100, false, 1, 0},
        SwatchGauge{20, 100, 20, nan, false, 1, 0},
        SwatchGauge{20, 100, 20, 100, false, -1, 0},
        SwatchGauge{20, infinite, 20, 100, false, 1, 0},
        CircleGauge{0, 6, 50, CircleLie::flat, 1, 0},
        CircleGauge{5, 0, 50, CircleLie::flat, 1, 0},
        CircleGauge{5, 6, 0, CircleLie::flat, 1, 0},
        CircleGauge{5, 6, 50, CircleLie::flat, nan, 0},
        GivenGauge{{0, 5, 0, 0}},
        GivenGauge{{5, 5, -1, 0}},
        GivenGauge{{5, infinite, 0, 0}},
    };
    for (std::size_t i = 0; i < unusable.size(); ++i)
        EXPECT_FALSE(gauge_from(unusable[i], 3.5)) << "case " << i;
    EXPECT_FALSE(gauge_from(EstimatedGauge{YarnWeight::light}, 0));
    EXPECT_FALSE(gauge_from(EstimatedGauge{YarnWeight::light}, nan));
}

}  // namespace
}  // namespace roundwright
