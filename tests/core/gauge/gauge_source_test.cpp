#include "core/gauge/gauge_source.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>
#include <numbers>

#include "core/gauge/flat_limits.h"
#include "core/gauge/gauge_belief.h"
#include "core/gauge/gauge_prior.h"

namespace roundwright {
namespace {

constexpr double tiny = 1e-9;

Gauge must(const GaugeSource& source, double hook_mm) {
    const std::optional<Gauge> gauge = gauge_from(source, hook_mm);
    EXPECT_TRUE(gauge.has_value());
    return gauge.value_or(Gauge{});
}

double deviation(const Gauge& gauge, const Eigen::Vector2d& direction) {
    return deviation_along(belief_of(gauge), direction);
}

double ratio(const Gauge& gauge) { return gauge.round_height_mm / gauge.stitch_width_mm; }

// Arithmetic: 20 stitches over 100 mm are 5 mm each. The tape's 1 mm (two deviations) and half a stitch
// either way make 0.5 % and 1.44 % in each direction.
TEST(GaugeFromSwatch, RoundsGiveBothDirections) {
    const Gauge gauge = must(SwatchGauge{20, 100, 20, 96, false, 1, 0}, 3.5);
    EXPECT_NEAR(gauge.stitch_width_mm, 5, 0.005);
    EXPECT_NEAR(gauge.round_height_mm, 4.8, 0.005);
    EXPECT_NEAR(gauge.stitch_width_error_mm / 5 / 2, std::hypot(0.005, 0.0144), 0.0005);
    EXPECT_NEAR(gauge.error_correlation, 0, 0.02);
}

TEST(GaugeFromSwatch, MoreStitchesSayMore) {
    const Gauge small = must(SwatchGauge{7, 50.8, 4, 25.4, false, 1, 0}, 4);
    const Gauge large = must(SwatchGauge{28, 203.2, 32, 203.2, false, 1, 0}, 4);
    EXPECT_LT(large.stitch_width_error_mm, small.stitch_width_error_mm / 3);
    EXPECT_LT(large.round_height_error_mm, small.round_height_error_mm / 4);
    EXPECT_LT(std::abs(std::log(ratio(small))), std::abs(std::log(ratio(large))));  // the prior says more
}

// A published swatch: 20 x 20 single crochets, 6.25 x 5.75 in with a 6 mm hook, w 7.94 mm, h 7.30 mm. Rows
// have h / w of 0.92 where rounds have about 1.
TEST(GaugeFromSwatch, RowsGiveTheSizeAndLeaveTheRatioOpen) {
    const Gauge gauge = must(SwatchGauge{20, 6.25 * 25.4, 20, 5.75 * 25.4, true, 1, 6}, 6);
    EXPECT_NEAR(size_and_ratio(belief_of(gauge)).size_mm, std::sqrt(7.94 * 7.30), 0.05);
    EXPECT_NEAR(ratio(gauge), 1, 0.02);
    EXPECT_LT(deviation(gauge, gauge_direction::size()), 0.03);
    EXPECT_NEAR(deviation(gauge, gauge_direction::ratio()), 0.06, 0.01);
}

// "Ghost / pumpkin egg cozy": 7 stitches in 2 in and 4 rows in 1 in; in the round 6.65 mm by 6.8 mm.
TEST(GaugeFromSwatch, ACupIsWithinWhatItsRowsSay) {
    const Gauge gauge = must(SwatchGauge{7, 50.8, 4, 25.4, true, 1, 0}, 4);
    EXPECT_NEAR(gauge.stitch_width_mm, 6.65, gauge.stitch_width_error_mm);
    EXPECT_NEAR(gauge.round_height_mm, 6.8, gauge.round_height_error_mm);
    EXPECT_NEAR(size_and_ratio(belief_of(gauge)).size_mm, std::sqrt(6.65 * 6.8), 0.1);
}

TEST(GaugeFromSwatch, AnotherHookScalesAndAddsUncertainty) {
    SwatchGauge swatch{20, 100, 20, 90, false, 1, 4};
    const Gauge same = must(swatch, 4);
    const Gauge thicker = must(swatch, 5);
    EXPECT_NEAR(thicker.stitch_width_mm, same.stitch_width_mm * 1.25, 0.01);
    EXPECT_NEAR(thicker.round_height_mm, same.round_height_mm * 1.25, 0.01);
    EXPECT_NEAR(deviation(thicker, gauge_direction::size()),
                std::hypot(deviation(same, gauge_direction::size()), std::log(1.25) / 4), 1e-3);
    EXPECT_NEAR(deviation(thicker, gauge_direction::ratio()), deviation(same, gauge_direction::ratio()),
                1e-3);
    swatch.hook_mm = 0;
    EXPECT_NEAR(must(swatch, 5).stitch_width_mm, same.stitch_width_mm, 1e-3);
}

// Gauge circle, common in toy books: 5 rounds, 30 stitches, 2 in across with a 3.5 to 3.75 mm hook (common
// practice). Its rounds are measured; of the width it says no more than that such a circle lies flat.
TEST(GaugeFromCircle, AFlatCircleGivesTheHeightAndBoundsTheRatio) {
    const Gauge gauge = must(CircleGauge{5, 6, 50.8, CircleLie::flat, 1, 0}, 3.5);
    EXPECT_NEAR(gauge.round_height_mm, 5.08, 0.005);
    EXPECT_NEAR(gauge.round_height_error_mm / 5.08 / 2, std::hypot(0.5 / 50.8, 0.02), 1e-3);
    EXPECT_GT(ratio(gauge), flat_ratios(6).least);
    EXPECT_LT(ratio(gauge), flat_ratios(6).most);
    EXPECT_LT(deviation(gauge, gauge_direction::ratio()), 0.75 * ratio_spread);
}

// "Pocket-Size Planet": five rounds of six laid flat are 50.8 mm across, and its ball is 76.2 mm wide with 48
// stitches around: they are about 0.98 h wide. 1.047 h, what N w = 2 pi r gives, would make it 83 mm.
TEST(GaugeFromCircle, ABallOfTheSameHandIsAsWideAsItsCircleSays) {
    const Gauge gauge = must(CircleGauge{5, 6, 50.8, CircleLie::flat, 1, 0}, 4);
    const double in_ball = 76.2 * std::numbers::pi / 48;
    EXPECT_NEAR(gauge.stitch_width_mm, in_ball, 0.04 * in_ball);
    EXPECT_LT(std::abs(gauge.stitch_width_mm - in_ball), gauge.stitch_width_error_mm);
}

// A circle that cups has stitches too narrow for its rounds, one that ruffles too wide ones.
TEST(GaugeFromCircle, UnevenCirclesSayOnWhichSideTheRatioLies) {
    const Gauge flat = must(CircleGauge{5, 6, 50, CircleLie::flat, 1, 0}, 3.5);
    const Gauge cups = must(CircleGauge{5, 6, 50, CircleLie::cups, 1, 0}, 3.5);
    const Gauge ruffles = must(CircleGauge{5, 6, 50, CircleLie::ruffles, 1, 0}, 3.5);
    EXPECT_GT(ratio(cups), flat_ratios(6).most);
    EXPECT_LT(ratio(ruffles), flat_ratios(6).least);
    EXPECT_NEAR(ruffles.round_height_mm, flat.round_height_mm, 0.01);
    // Between pressed flat and its edge as it stands: 2 k h <= across <= N w / pi.
    EXPECT_GT(cups.round_height_mm, 5);
    EXPECT_LT(cups.stitch_width_mm, 50 * std::numbers::pi / 30);
    EXPECT_GT(deviation(cups, gauge_direction::size()), deviation(ruffles, gauge_direction::height()));
}

// Craft Yarn Council's www.YarnStandards.com: light yarn 12 to 17 sc per 4 in with a 4.5 to 5.5 mm hook. Toys
// are worked more tightly (see gauge_prior_test).
TEST(GaugeFromEstimate, IsNearTheMiddleOfTheTableScaledByTheHook) {
    const Gauge gauge = must(EstimatedGauge{YarnWeight::light}, 3.5);
    EXPECT_NEAR(gauge.stitch_width_mm, 101.6 / 14.5 * 3.5 / 5, 0.1 * gauge.stitch_width_mm);
    EXPECT_NEAR(ratio(gauge), 1, tiny);
    EXPECT_NEAR(deviation(gauge, gauge_direction::ratio()), 0.12, tiny);
    EXPECT_NEAR(size_and_ratio(belief_of(gauge)).correlation, 0, tiny);
    EXPECT_NEAR(must(EstimatedGauge{YarnWeight::light}, 7).stitch_width_mm, 2 * gauge.stitch_width_mm, tiny);
}

// The table gives lace in double crochet, so it has no estimate; jumbo as "5 and fewer" with "16 mm and up".
TEST(GaugeFromEstimate, EndsOfTheTable) {
    EXPECT_FALSE(gauge_from(EstimatedGauge{YarnWeight::lace}, 2));
    const Gauge jumbo = must(EstimatedGauge{YarnWeight::jumbo}, 16);
    EXPECT_NEAR(jumbo.stitch_width_mm, 101.6 / 5, tiny);
    EXPECT_GT(deviation(jumbo, gauge_direction::size()),
              deviation(must(EstimatedGauge{YarnWeight::medium}, 4), gauge_direction::size()));
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
