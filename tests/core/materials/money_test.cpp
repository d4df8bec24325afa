#include "core/materials/money.h"

#include <gtest/gtest.h>
#include <random>

namespace roundwright {
namespace {

TEST(Money, IsExactWhereBinaryFractionsAreNot) {
    EXPECT_EQ(Money::of(0.1) + Money::of(0.2), Money::of(0.3));
    Money sum;
    for (int k = 0; k < 1000; ++k) sum += Money::of(0.01);
    EXPECT_EQ(sum, Money::of(10));
    EXPECT_EQ(Money::of(19.99) * 100, Money::of(1999));
}

TEST(Money, IsRoundedOnceAndAwayFromNothingWhereTwoAreAsNear) {
    EXPECT_EQ(Money::of(1.005).rounded_to(2), Money::of(1.01));
    EXPECT_EQ(Money::of(-1.005).rounded_to(2), Money::of(-1.01));
    EXPECT_EQ(Money::of(1.0049).rounded_to(2), Money::of(1));
    EXPECT_EQ(Money::of(149.5).rounded_to(0), Money::of(150));
    EXPECT_EQ(Money::of(1.2345).rounded_to(3), Money::of(1.235));
    EXPECT_EQ(Money::of(1.2345).rounded_to(4), Money::of(1.2345));
    EXPECT_EQ(Money::of(10).times(1.0 / 3).ten_thousandths(), 33'333);
}

TEST(Money, HoldsEveryAmountWithFourDecimals) {
    std::mt19937_64 random(19);
    for (int k = 0; k < 10'000; ++k) {
        const auto parts = static_cast<std::int64_t>(random() % 10'000'000'000);
        EXPECT_EQ(Money::of(static_cast<double>(parts) / 10'000).ten_thousandths(), parts);
    }
}

TEST(Money, StaysInItsRange) {
    EXPECT_GT(Money::of(1e300), Money::of(1e12));
    EXPECT_LT(Money::of(-1e300), Money::of(-1e12));
}

}  // namespace
}  // namespace roundwright
