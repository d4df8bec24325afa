#include "core/materials/stuffing.h"

#include <gtest/gtest.h>

#include "core/pattern/toy.h"

namespace roundwright {
namespace {

constexpr double litre_mm3 = 1e6;

TEST(Stuffing, MediumFillIsThePublishedBand) {
    // Published for cushions: 12 to 16 kg/m3, which is grams a litre.
    const Estimate g = stuffing_grams(litre_mm3, medium_stuffing_stretch, {});
    EXPECT_NEAR(g.low, 12, 1e-9);
    EXPECT_NEAR(g.likely, 14, 1e-9);
    EXPECT_NEAR(g.high, 16, 1e-9);
}

TEST(Stuffing, FirmIsUpToThreeTenthsMore) {
    const Estimate g = stuffing_grams(litre_mm3, firm_stuffing_stretch, {});  // published: up to 1.3 times
    EXPECT_NEAR(g.likely, 14 * 1.3, 1e-9);
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
