#include "core/gauge/combined_gauge.h"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "core/gauge/gauge_belief.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

constexpr double hook_mm = 3.5;

GaugeMeasurement circle(double across_mm) {
    return {CircleGauge{.rounds = 5, .increases = 6, .across_mm = across_mm}, {}, {}};
}
GaugeMeasurement swatch(double stitch_mm, double round_mm) {
    return {SwatchGauge{.stitches = 20, .width_mm = 20 * stitch_mm, .rounds = 20, .height_mm = 20 * round_mm},
            {},
            {}};
}
GaugeMeasurement finished(std::vector<GaugeLine> lines) {
    return {FinishedPieceGauge{"Head", {}, std::move(lines), 0}, {}, {}};
}

CombinedGauge must(const std::vector<GaugeMeasurement>& measurements, double hook = hook_mm) {
    const auto combined = combined_gauge({measurements}, hook);
    EXPECT_TRUE(combined.has_value());
    return combined.value_or(CombinedGauge{{}, std::vector<MeasurementPart>(measurements.size()), {}});
}

double size_deviation(const Gauge& gauge) { return size_and_ratio(belief_of(gauge)).size_deviation; }

void expect_same(const Gauge& a, const Gauge& b, double near) {
    EXPECT_NEAR(a.stitch_width_mm, b.stitch_width_mm, near);
    EXPECT_NEAR(a.round_height_mm, b.round_height_mm, near);
    EXPECT_NEAR(a.stitch_width_error_mm, b.stitch_width_error_mm, near);
    EXPECT_NEAR(a.round_height_error_mm, b.round_height_error_mm, near);
    EXPECT_NEAR(a.error_correlation, b.error_correlation, 10 * near);
}

TEST(CombinedGauge, OneAloneGivesWhatItGivesByItself) {
    for (const GaugeSource& source : {GaugeSource(CircleGauge{.rounds = 5, .increases = 6, .across_mm = 52}),
                                      GaugeSource(CircleGauge{5, 6, 52, CircleLie::cups, 1, 4}),
                                      GaugeSource(SwatchGauge{20, 100, 22, 100, true, 1, 0})}) {
        const GaugeSource several = SeveralGauge{measurements_of(source)};
        expect_same(gauge_from(several, hook_mm).value(), gauge_from(source, hook_mm).value(), 1e-4);
    }
}

TEST(CombinedGauge, TwoThatAgreeAreKnownBetterThanEither) {
    const CombinedGauge one = must({circle(52)});
    const CombinedGauge two = must({circle(52), circle(52)});
    const CombinedGauge four = must({circle(52), circle(52), circle(52), circle(52)});
    EXPECT_LT(size_deviation(two.gauge), size_deviation(one.gauge));
    EXPECT_LT(size_deviation(four.gauge), size_deviation(two.gauge));
    EXPECT_NEAR(two.gauge.round_height_mm, 5.2, 0.02);
    EXPECT_EQ(two.disagrees, std::nullopt);
    EXPECT_NEAR(two.parts[0].share, 0.5, 1e-9);
}

// A circle that lies flat says of the ratio between which limits it lies. Seeing that twice says no more.
TEST(CombinedGauge, TheLieOfTwoCirclesSaysNoMoreThanThatOfOne) {
    const auto ratio = [](const Gauge& gauge) { return size_and_ratio(belief_of(gauge)).ratio_deviation; };
    EXPECT_NEAR(ratio(must({circle(52), circle(52)}).gauge), ratio(must({circle(52)}).gauge), 1e-4);
}

// A swatch is known to 1 in 200 by the tape; three circles by less. The spread from day to day keeps the
// swatch from outweighing them all.
TEST(CombinedGauge, EachCountsByHowWellItIsKnown) {
    GaugeMeasurement careless = circle(60);
    std::get<CircleGauge>(careless.what).measuring_error_mm = 8;
    const CombinedGauge combined = must({circle(52), careless});
    EXPECT_GT(combined.parts[0].share, 0.7);
    EXPECT_NEAR(combined.parts[0].share + combined.parts[1].share, 1, 1e-9);
    EXPECT_LT(combined.gauge.round_height_mm, 5.4);
    const CombinedGauge with_swatch = must({circle(52), circle(52), circle(52), swatch(5.2, 5.2)});
    EXPECT_LT(with_swatch.parts[3].share, 0.75);
}

TEST(CombinedGauge, WhatIsLeftOutOrCannotBeUsedHasNoShare) {
    GaugeMeasurement off = circle(70);
    off.counts = false;
    const CombinedGauge combined = must({circle(52), off, circle(0)});
    EXPECT_EQ(combined.parts[0].share, 1);
    EXPECT_EQ(combined.parts[1].share, 0);
    EXPECT_EQ(combined.parts[2].share, 0);
    EXPECT_EQ(combined.counted(), 1U);
    expect_same(combined.gauge, must({circle(52)}).gauge, 1e-12);
    EXPECT_EQ(combined_gauge({{off, circle(0)}}, hook_mm), std::nullopt);
    EXPECT_EQ(combined_gauge({}, hook_mm), std::nullopt);
    EXPECT_EQ(gauge_from(SeveralGauge{}, hook_mm), std::nullopt);
}

TEST(CombinedGauge, TheOneThatDisagreesIsSaidWithItsSize) {
    const CombinedGauge combined = must({circle(52), circle(52.5), circle(58)});
    ASSERT_TRUE(combined.disagrees.has_value());
    EXPECT_EQ(*combined.disagrees, 2U);
    EXPECT_EQ(combined.parts[2].how, Differs::size);
    EXPECT_NEAR(combined.parts[2].by, 58 / 52.25 - 1, 0.01);
    EXPECT_EQ(must({circle(52), circle(52.5), circle(53)}).disagrees, std::nullopt);
}

TEST(CombinedGauge, ADifferentRatioIsToldFromADifferentSize) {
    const CombinedGauge combined = must({swatch(5, 5), swatch(5.02, 5), swatch(4.5, 5.5)});
    ASSERT_EQ(combined.disagrees, std::optional<std::size_t>(2));
    EXPECT_EQ(combined.parts[2].how, Differs::ratio);
    EXPECT_NEAR(combined.parts[2].by, 5.5 / 4.5 - 1, 0.03);
}

// ln w + ln h = 2 ln 5 fixes the size and leaves the ratio where any maker's is.
TEST(CombinedGauge, AFinishedPieceIsLinearEvidence) {
    const CombinedGauge size = must({finished({{1, 1, 2 * std::log(5.0), 0.01}})});
    EXPECT_NEAR(std::sqrt(size.gauge.stitch_width_mm * size.gauge.round_height_mm), 5, 1e-3);
    EXPECT_NEAR(size_deviation(size.gauge), 0.005, 1e-4);
    EXPECT_GT(size_and_ratio(belief_of(size.gauge)).ratio_deviation, 0.1);
    const CombinedGauge both = must({finished({{1, 0, std::log(5.0), 0.01}, {0, 1, std::log(4.8), 0.01}})});
    EXPECT_NEAR(both.gauge.stitch_width_mm, 5, 0.01);
    EXPECT_NEAR(both.gauge.round_height_mm, 4.8, 0.01);
    EXPECT_EQ(combined_gauge({{finished({{0, 0, 1, 0.1}, {1, 0, 1, 0}})}}, hook_mm), std::nullopt);
}

// As of every measurement: another hook scales both sizes, half of it uncertain.
TEST(CombinedGauge, AFinishedPieceKeepsItsHook) {
    FinishedPieceGauge piece{"Head", {}, {{1, 0, std::log(5.0), 0.01}, {0, 1, std::log(5.0), 0.01}}, 3};
    const CombinedGauge combined = must({{piece, {}, {}}}, 4);
    EXPECT_NEAR(combined.gauge.stitch_width_mm, 5.0 * 4 / 3, 0.01);
    EXPECT_GT(combined.gauge.stitch_width_error_mm, 0.5);
}

// Simulated: the belief holds the hand that measured, as often as its errors say.
TEST(CombinedGauge, HoldsTheHandThatMeasured) {
    std::mt19937 random(15);
    std::normal_distribution<double> normal;
    const int hands = testing::random_cases(4'000);
    int within = 0;
    for (int i = 0; i < hands; ++i) {
        const double size = std::log(5.0) + 0.2 * normal(random);
        const double ratio = 0.12 * normal(random);
        std::vector<GaugeMeasurement> measured;
        for (int k = 0; k < 3; ++k) {
            const double day = day_to_day_spread * normal(random);
            const double w = std::exp(size - ratio / 2 + day + 0.0144 * normal(random));
            const double h = std::exp(size + ratio / 2 + day + 0.0144 * normal(random));
            measured.push_back(swatch(w, h));
        }
        const GaugeBelief belief = belief_of(must(measured).gauge);
        const double off = size - gauge_direction::size().dot(belief.mean);
        within += std::abs(off) < 1.645 * deviation_along(belief, gauge_direction::size()) ? 1 : 0;
    }
    EXPECT_NEAR(static_cast<double>(within) / hands, 0.9, 0.05 + 1.5 / std::sqrt(hands));
}

}  // namespace
}  // namespace roundwright
