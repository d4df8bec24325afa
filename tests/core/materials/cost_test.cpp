#include "core/materials/cost.h"

#include <gtest/gtest.h>

namespace roundwright {
namespace {

Yarn priced() {
    Yarn yarn;
    yarn.ball_grams = 50;
    yarn.ball_price = 4;
    return yarn;
}

TEST(Cost, AddsWhatIsKnown) {
    Making making;
    making.hourly_rate = 12;
    making.stuffing_price_per_kg = 10;
    making.other_cost = 0.5;
    const Cost sum = cost({priced()}, {{25, 20, 30}}, {100, 90, 110}, {90, 60, 120}, making);
    EXPECT_DOUBLE_EQ(sum.yarn[0]->likely, 2);
    EXPECT_DOUBLE_EQ(sum.stuffing->likely, 1);
    EXPECT_DOUBLE_EQ(sum.work->likely, 18);
    EXPECT_DOUBLE_EQ(sum.total.likely, 21.5);
    EXPECT_DOUBLE_EQ(sum.total.low, 1.6 + 0.9 + 12 + 0.5);
    EXPECT_DOUBLE_EQ(sum.total.high, 2.4 + 1.1 + 24 + 0.5);
    EXPECT_TRUE(sum.complete);
}

TEST(Cost, SaysWhenAPriceIsMissing) {
    const Cost sum = cost({priced(), Yarn{}}, {{25, 20, 30}, {5, 4, 6}}, exactly(0), exactly(10), {});
    EXPECT_FALSE(sum.complete);
    EXPECT_FALSE(sum.yarn[1].has_value());
    EXPECT_FALSE(sum.work.has_value());
    EXPECT_DOUBLE_EQ(sum.total.likely, 2);
}

TEST(Cost, AnUnusedYarnNeedsNoPrice) {
    EXPECT_TRUE(cost({priced(), Yarn{}}, {{25, 20, 30}, exactly(0)}, exactly(0), exactly(0), {}).complete);
}

TEST(Cost, BuysWholeBallsForTheHighEstimate) {
    EXPECT_EQ(balls_to_buy(priced(), {45, 40, 51}), 2);
    EXPECT_EQ(balls_to_buy(priced(), {45, 40, 50}), 1);
    EXPECT_EQ(balls_to_buy(Yarn{}, {45, 40, 50}), std::nullopt);
}

}  // namespace
}  // namespace roundwright
