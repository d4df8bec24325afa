#include "core/gauge/gauge_belief.h"

#include <Eigen/LU>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <random>

namespace roundwright {
namespace {

using std::numbers::pi;

constexpr double tiny = 1e-12;

GaugeBelief uncertain() { return belief_of(SizeAndRatio{5, 0.96, 0.1, 0.12, 0}); }

TEST(GaugeBeliefTest, AGaugeIsTheSameBothWays) {
    for (const Gauge& gauge : {Gauge{5, 4.8, 0.3, 0.4, 0.5}, Gauge{0.002, 900, 0.001, 300, -1},
                               Gauge{5, 5, 0, 0, 0}, Gauge{5, 6, 0, 0.5, 0}, Gauge{5, 6, 0.5, 0.6, 1}}) {
        const Gauge back = gauge_of(belief_of(gauge));
        EXPECT_NEAR(back.stitch_width_mm / gauge.stitch_width_mm, 1, tiny);
        EXPECT_NEAR(back.round_height_mm / gauge.round_height_mm, 1, tiny);
        EXPECT_NEAR(back.stitch_width_error_mm, gauge.stitch_width_error_mm, tiny);
        EXPECT_NEAR(back.round_height_error_mm, gauge.round_height_error_mm, 1e-10);
        EXPECT_NEAR(back.error_correlation, gauge.error_correlation, tiny);
    }
}

TEST(GaugeBeliefTest, SizeAndRatioAreTheSameBothWays) {
    const SizeAndRatio back = size_and_ratio(belief_of(SizeAndRatio{5.5, 0.9, 0.1, 0.12, -0.3}));
    EXPECT_NEAR(back.size_mm, 5.5, tiny);
    EXPECT_NEAR(back.ratio, 0.9, tiny);
    EXPECT_NEAR(back.size_deviation, 0.1, tiny);
    EXPECT_NEAR(back.ratio_deviation, 0.12, tiny);
    EXPECT_NEAR(back.correlation, -0.3, 1e-9);
}

// w = size / sqrt(ratio): a size of 5 and a ratio of 0.96 are 5.103 by 4.899 mm, and half of the ratio's
// error is in each.
TEST(GaugeBeliefTest, BothPartsAreInBothDirections) {
    const Gauge gauge = gauge_of(uncertain());
    EXPECT_NEAR(gauge.stitch_width_mm, 5 / std::sqrt(0.96), tiny);
    EXPECT_NEAR(gauge.round_height_mm, 5 * std::sqrt(0.96), tiny);
    EXPECT_NEAR(gauge.stitch_width_error_mm / gauge.stitch_width_mm, 2 * std::hypot(0.1, 0.06), tiny);
    EXPECT_NEAR(gauge.error_correlation, (0.01 - 0.0036) / (0.01 + 0.0036), tiny);
}

// Two equally good numbers: the mean of both, the error by the root of two less.
TEST(GaugeBeliefTest, EvidenceIsWeighedByItsError) {
    const GaugeBelief after = narrowed(uncertain(), {gauge_direction::size(), std::log(6.0), 0.1});
    EXPECT_NEAR(gauge_direction::size().dot(after.mean), (std::log(5.0) + std::log(6.0)) / 2, tiny);
    EXPECT_NEAR(deviation_along(after, gauge_direction::size()), 0.1 / std::sqrt(2), tiny);
    EXPECT_NEAR(size_and_ratio(after).ratio, 0.96, tiny);
    EXPECT_NEAR(size_and_ratio(after).ratio_deviation, 0.12, tiny);
}

TEST(GaugeBeliefTest, ExactEvidenceLeavesNoDoubtInItsDirection) {
    const GaugeBelief after = narrowed(uncertain(), {gauge_direction::height(), std::log(5.08), 0});
    const Gauge gauge = gauge_of(after);
    EXPECT_NEAR(gauge.round_height_mm, 5.08, tiny);
    EXPECT_NEAR(gauge.round_height_error_mm, 0, 1e-7);
    EXPECT_GT(gauge.stitch_width_error_mm, 0.4);
}

TEST(GaugeBeliefTest, EvidenceCountsTheSameInAnyOrder) {
    const GaugeEvidence width{gauge_direction::width(), std::log(5.3), 0.02};
    const GaugeEvidence girth{{0.8, 0.2}, std::log(5.2), 0.01};
    const GaugeBelief one = narrowed(narrowed(uncertain(), width), girth);
    const GaugeBelief other = narrowed(narrowed(uncertain(), girth), width);
    EXPECT_TRUE(one.mean.isApprox(other.mean, tiny));
    EXPECT_TRUE(one.covariance.isApprox(other.covariance, 1e-9));
}

// The product of two normal densities: the inverse covariances add.
TEST(GaugeBeliefTest, BothDirectionsAtOnceAreTwoIndependentNumbers) {
    const GaugeBelief measured = belief_of(Gauge{5.4, 5.0, 0.2, 0.3, 0.7});
    const GaugeBelief after = narrowed(uncertain(), GaugeFindings{evidence_of(measured), {}});
    const Eigen::Matrix2d information = uncertain().covariance.inverse() + measured.covariance.inverse();
    EXPECT_TRUE(after.covariance.isApprox(information.inverse(), 1e-9));
    const Eigen::Vector2d weighed =
        uncertain().covariance.inverse() * uncertain().mean + measured.covariance.inverse() * measured.mean;
    EXPECT_TRUE(after.mean.isApprox(information.inverse() * weighed, 1e-9));
}

TEST(GaugeBeliefTest, NonsenseChangesNothing) {
    for (const GaugeEvidence& nonsense :
         {GaugeEvidence{gauge_direction::size(), std::nan(""), 0.1},
          GaugeEvidence{gauge_direction::size(), 1, std::nan("")},
          GaugeEvidence{gauge_direction::size(), 1, -1}, GaugeEvidence{{0, 0}, 1, 0.1},
          GaugeEvidence{gauge_direction::size(), HUGE_VAL, 0.1}}) {
        const GaugeBelief after = narrowed(uncertain(), nonsense);
        EXPECT_EQ(after.mean, uncertain().mean);
        EXPECT_EQ(after.covariance, uncertain().covariance);
    }
    const GaugeBelief after = bounded(uncertain(), GaugeBounds{gauge_direction::ratio(), 0.1, -0.1});
    EXPECT_EQ(after.mean, uncertain().mean);
}

// Half a normal distribution: mean sqrt(2 / pi), variance 1 - 2 / pi.
TEST(GaugeBeliefTest, LimitsTruncateTheBelief) {
    const double middle = std::log(0.96);
    const GaugeBelief after = bounded(uncertain(), GaugeBounds{gauge_direction::ratio(), middle, HUGE_VAL});
    EXPECT_NEAR(gauge_direction::ratio().dot(after.mean) - middle, 0.12 * std::sqrt(2 / pi), tiny);
    EXPECT_NEAR(deviation_along(after, gauge_direction::ratio()), 0.12 * std::sqrt(1 - 2 / pi), tiny);
    EXPECT_NEAR(size_and_ratio(after).size_mm, 5, tiny);
}

TEST(GaugeBeliefTest, LimitsHaveTheMomentsOfWhatIsDrawnBetweenThem) {
    std::mt19937 random(1);
    std::normal_distribution<double> standard;
    for (const auto& [low, high] : {std::pair{-0.1, 0.05}, {0.2, 0.5}, {-HUGE_VAL, -0.15}, {-9.0, 9.0}}) {
        double sum = 0, squares = 0;
        int within = 0;
        for (int i = 0; i < 400'000; ++i) {
            const double drawn = std::log(0.96) + 0.12 * standard(random);
            if (drawn < low || drawn > high) continue;
            ++within;
            sum += drawn;
            squares += drawn * drawn;
        }
        const double mean = sum / within;
        const GaugeBelief after = bounded(uncertain(), GaugeBounds{gauge_direction::ratio(), low, high});
        EXPECT_NEAR(gauge_direction::ratio().dot(after.mean), mean, 2e-3);
        EXPECT_NEAR(deviation_along(after, gauge_direction::ratio()),
                    std::sqrt(squares / within - mean * mean), 2e-3);
    }
}

TEST(GaugeBeliefTest, LimitsFarOutAreKept) {
    for (const double low : {0.5, 2.0, 5.0, 50.0}) {
        for (const double high : {low + 0.01, HUGE_VAL}) {
            for (const GaugeBounds& bounds : {GaugeBounds{gauge_direction::ratio(), low, high},
                                              GaugeBounds{gauge_direction::ratio(), -high, -low}}) {
                const GaugeBelief after = bounded(uncertain(), bounds);
                const double found = std::abs(gauge_direction::ratio().dot(after.mean));
                EXPECT_GE(found, low - tiny);
                EXPECT_LE(found, std::min(high, low + 0.05) + tiny);
                EXPECT_GE(deviation_along(after, gauge_direction::ratio()), 0);
            }
        }
    }
}

}  // namespace
}  // namespace roundwright
