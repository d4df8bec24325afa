#include "core/shape/growth.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/stitches/stitch_measure.h"

namespace roundwright::test {
namespace {

// Henderson and Taimina, Crocheting the Hyperbolic Plane, Math. Intelligencer 23(2) (2001) 17-28: growth by
// (k + 1) / k each round is a plane of radius rho = h / ln((k + 1) / k). Figures computed, in round heights.
TEST(Growth, HyperbolicRadiusFromCountsAlone) {
    const double printed[] = {1.442695, 2.466303, 3.476059, 4.481420, 5.484815, 6.487159};
    for (int k = 1; k <= 12; ++k) {
        const double rho = hyperbolic_radius_mm(60.0 * k, 60.0 * (k + 1), 5) / 5;
        if (k <= 6) {
            EXPECT_NEAR(rho, printed[k - 1], 5e-7) << "k = " << k;
        }
        EXPECT_NEAR(rho, k + 0.5, 0.06) << "k = " << k;  // series of 1 / ln(1 + 1 / k): k + 1/2 - 1/(12 k)
    }
    EXPECT_NEAR(hyperbolic_radius_mm(10, 11, 1), 10.492059, 5e-7);
    EXPECT_TRUE(std::isinf(hyperbolic_radius_mm(60, 60, 5)));
}

// A round of a hyperbolic disc, circle 2 pi rho sinh(s / rho), far from the centre.
TEST(Growth, HyperbolicDiscGivesItsRadiusBack) {
    const double rho = 12;
    const double h = 5;
    const auto circle = [&](int round) { return 2 * std::numbers::pi * rho * std::sinh(round * h / rho); };
    EXPECT_NEAR(hyperbolic_radius_mm(circle(11), circle(12), h), rho, 0.01);
}

// Doubling every round from 6 has 1536 stitches in round nine (computed).
TEST(Growth, Doubling) {
    double loop = 6;
    for (int round = 2; round <= 9; ++round) {
        EXPECT_NEAR(hyperbolic_radius_mm(loop, 2 * loop, 1), 1 / std::numbers::ln2, 1e-12);
        loop *= 2;
    }
    EXPECT_EQ(loop, 1536);
}

// Cone from k increases a round, w = h: half angle asin g (computed).
TEST(Growth, RatioIsTheSineOfTheCone) {
    const std::pair<int, double> cones[] = {{4, 39.5402}, {5, 52.7285}, {6, 72.7326}};
    for (const auto& [k, degrees] : cones)
        EXPECT_NEAR(std::asin(growth_ratio(30, 30 + k * 5.0, 5)) * 180 / std::numbers::pi, degrees, 1e-4);
    EXPECT_EQ(growth_ratio(30, 30, 5), 0);
    EXPECT_LT(growth_ratio(30, 24, 5), 0);
}

// Common practice: 6 (6-8) single, 8 (8-10) half double, 12 (10-14) double crochets more a round lie flat.
TEST(Growth, FlatIncreaseByStitchKind) {
    const auto flat = [](StitchKind kind) { return flat_increase(height_in_sc(kind), width_in_sc(kind)); };
    EXPECT_GT(flat(StitchKind::single_crochet), 6);
    EXPECT_LT(flat(StitchKind::single_crochet), 8);
    EXPECT_GT(flat(StitchKind::half_double_crochet), 8);
    EXPECT_LT(flat(StitchKind::half_double_crochet), 10);
    EXPECT_GT(flat(StitchKind::double_crochet), 10);
    EXPECT_LT(flat(StitchKind::double_crochet), 14);
}

}  // namespace
}  // namespace roundwright::test
