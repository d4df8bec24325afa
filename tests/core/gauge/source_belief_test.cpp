#include "core/gauge/source_belief.h"

#include <Eigen/Eigenvalues>
#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "core/gauge/flat_limits.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

class RandomSource {
  public:
    explicit RandomSource(unsigned seed) : bits_(seed) {}

    double magnitude(double low, double high) {
        return std::exp(std::uniform_real_distribution<double>(std::log(low), std::log(high))(bits_));
    }
    int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(bits_); }
    double hook() { return whole(0, 3) == 0 ? 0 : magnitude(0.5, 50); }
    double tape() { return whole(0, 3) == 0 ? 0 : magnitude(0.01, 20); }

    GaugeSource next() {
        if (whole(0, 1) == 0) {
            return SwatchGauge{magnitude(0.5, 1000),
                               magnitude(1, 3000),
                               magnitude(0.5, 1000),
                               magnitude(1, 3000),
                               whole(0, 1) == 0,
                               tape(),
                               hook()};
        }
        return CircleGauge{
            whole(1, 200), whole(1, 40), magnitude(1, 3000), static_cast<CircleLie>(whole(0, 2)),
            tape(),        hook()};
    }

  private:
    std::mt19937 bits_;
};

// Whatever is typed, what is believed is a distribution: finite, no variance below zero.
TEST(SourceBelief, EveryMeasurementGivesADistribution) {
    RandomSource random(1);
    for (int number = 0; number < testing::random_cases(20'000); ++number) {
        const GaugeSource source = random.next();
        const auto belief = belief_of(source, random.hook());
        ASSERT_TRUE(belief) << number;
        ASSERT_TRUE(belief->mean.allFinite() && belief->covariance.allFinite()) << number;
        const auto variances =
            Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d>(belief->covariance).eigenvalues();
        ASSERT_GE(variances.minCoeff(), -1e-9) << number;
        const Gauge gauge = gauge_of(*belief);
        ASSERT_GT(gauge.stitch_width_mm, 0) << number;
        ASSERT_GT(gauge.round_height_mm, 0) << number;
        ASSERT_LE(std::abs(gauge.error_correlation), 1) << number;
    }
}

// However many increases a circle has: where it lies flat, so does one in the gauge that it gives.
TEST(SourceBelief, ACirclesGaugeLiesAsTheCircleDoes) {
    for (int increases = 3; increases <= 16; ++increases) {
        const FlatRatios flat = flat_ratios(increases);
        for (const CircleLie lie : {CircleLie::flat, CircleLie::cups, CircleLie::ruffles}) {
            const auto gauge = gauge_from(CircleGauge{5, increases, 50, lie, 1, 0}, 4).value();
            const double ratio = gauge.round_height_mm / gauge.stitch_width_mm;
            EXPECT_EQ(ratio < flat.least, lie == CircleLie::ruffles) << increases << " " << ratio;
            EXPECT_EQ(ratio > flat.most, lie == CircleLie::cups) << increases << " " << ratio;
        }
    }
}

}  // namespace
}  // namespace roundwright
