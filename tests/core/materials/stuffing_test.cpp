#include "core/materials/stuffing.h"

#include <gtest/gtest.h>

#include "core/toy/toy.h"

namespace roundwright {
namespace {

constexpr double litre_mm3 = 1e6;

// Published for cushions: 12 to 16 kg/m3, which is grams a litre. Toys are filled more tightly: from that
// upwards.
TEST(Stuffing, TheGuessForToysGoesFarAboveCushions) {
    const Estimate g = stuffing_grams(litre_mm3, medium_stuffing_stretch, {});
    EXPECT_NEAR(g.low, 12, 1e-9);
    EXPECT_GT(g.likely, 16);
    EXPECT_GE(g.high, 3 * 16);
    EXPECT_NEAR(g.likely / g.low, g.high / g.likely, 0.05);
}

// The head that practitioners wondered about: 106 ml took "1.5 g".
TEST(Stuffing, AHeadOf106MillilitresMayTakeSixGrams) {
    const Estimate g = stuffing_grams(0.106 * litre_mm3, medium_stuffing_stretch, {});
    EXPECT_GT(g.likely, 2.5);
    EXPECT_GT(g.high, 6);
}

TEST(Stuffing, WhatTheScalesSayIsTheDifferenceToTheirStep) {
    const Estimate g = stuffing_weighed({34, 28, 1}, {});
    EXPECT_DOUBLE_EQ(g.likely, 6);
    EXPECT_DOUBLE_EQ(g.low, 5);
    EXPECT_DOUBLE_EQ(g.high, 7);
    const Estimate by_yarn = stuffing_weighed({34, std::nullopt, 1}, {26, 22, 30});
    EXPECT_DOUBLE_EQ(by_yarn.likely, 8);
    EXPECT_DOUBLE_EQ(by_yarn.low, 3.5);
    EXPECT_DOUBLE_EQ(by_yarn.high, 12.5);
}

// Arithmetic: 6 g in 0.2 l are 30 g a litre; in a piece stuffed firmly the same weight is less of a medium
// one.
TEST(Stuffing, AWeighedPieceGivesTheDensityThatGivesItsWeight) {
    for (const double stretch :
         {light_stuffing_stretch, medium_stuffing_stretch, firm_stuffing_stretch, 0.055}) {
        const auto density = medium_density({6, 5, 7}, 0.2 * litre_mm3, stretch);
        ASSERT_TRUE(density);
        EXPECT_NEAR(density->likely, 30 / fill_over_medium(stretch), 1e-9);
        const Making making = with_stuffing_density({}, *density);
        const Estimate again = stuffing_grams(0.2 * litre_mm3, stretch, making);
        EXPECT_NEAR(again.likely, 6, 1e-9);
        EXPECT_LE(again.low, 5);
        EXPECT_GE(again.high, 7);
        EXPECT_NEAR(again.high, 7 + 0.1 * 6, 1e-9);
    }
}

TEST(Stuffing, AWeightThatMayBeNoneSaysNothing) {
    EXPECT_FALSE(medium_density({1, 0, 2}, litre_mm3, medium_stuffing_stretch));
    EXPECT_FALSE(medium_density({6, 5, 7}, litre_mm3, unstuffed_stretch));
    EXPECT_FALSE(medium_density({6, 5, 7}, 0, medium_stuffing_stretch));
}

TEST(Stuffing, FirmIsUpToThreeTenthsMore) {
    const Estimate g = stuffing_grams(litre_mm3, firm_stuffing_stretch, {});  // published: up to 1.3 times
    EXPECT_NEAR(g.likely, guessed_fill_kg_per_m3.likely * 1.3, 1e-9);
    EXPECT_DOUBLE_EQ(fill_over_medium(1.0), 1.3);
}

TEST(Stuffing, GrowsWithTheStretchAndIsNothingWithoutOne) {
    EXPECT_EQ(fill_over_medium(0), 0);
    EXPECT_EQ(fill_over_medium(-1), 0);
    double before = 0;
    for (double stretch = 0.001; stretch < 0.1; stretch += 0.001) {
        EXPECT_GE(fill_over_medium(stretch), before);
        before = fill_over_medium(stretch);
    }
}

TEST(Stuffing, AWeighedDensityReplacesTheBand) {
    Making making;
    making.stuffing_density_kg_per_m3 = 40;
    const Estimate g = stuffing_grams(2 * litre_mm3, medium_stuffing_stretch, making);
    EXPECT_NEAR(g.likely, 80, 1e-9);
    EXPECT_NEAR(g.low, 72, 1e-9);
    EXPECT_NEAR(g.high, 88, 1e-9);
}

TEST(Stuffing, AnImpossibleVolumeWeighsNothing) {
    EXPECT_EQ(stuffing_grams(-5, medium_stuffing_stretch, {}), (Estimate{0, 0, 0}));
}

}  // namespace
}  // namespace roundwright
