#include "render/wording/takes_words.h"

#include <gtest/gtest.h>

namespace roundwright {
namespace {

const auto crowns = std::string("kr");

MoneyRange range(double likely, double low, double high) {
    return {Money::of(likely), Money::of(low), Money::of(high)};
}

TEST(TakesWords, MoneyHasItsCurrencyOnceAndItsRange) {
    EXPECT_EQ(money_words(Money::of(12.345), crowns), QStringLiteral("12.35 kr"));
    EXPECT_EQ(money_words(Money::of(12.5), {}), QStringLiteral("12.50"));
    EXPECT_EQ(money_words(range(12.5, 10, 15), crowns), QStringLiteral("12.50 kr (10.00 to 15.00)"));
    EXPECT_EQ(money_words(range(12.5, 12.5, 12.5), crowns), QStringLiteral("12.50 kr"));
}

TEST(TakesWords, AYarnIsSaidByLengthWeightAndBalls) {
    Yarn yarn;
    yarn.name = "Foam";
    const YarnUse use{{38, 29, 46}, {15.2, 12, 19}, std::nullopt};
    EXPECT_EQ(yarn_taken_words(yarn, use, 1, LengthUnit::millimetres),
              QStringLiteral("Foam: 38 m (29 to 46), 15 g (12 to 19), 1 ball"));
    EXPECT_EQ(yarn_taken_words(yarn, use, std::nullopt, LengthUnit::inches),
              QStringLiteral("Foam: 42 yd (32 to 50), 15 g (12 to 19)"));
}

TEST(TakesWords, ALossIsCalledOne) {
    Toy toy;
    toy.making.currency = "kr";
    Earnings sum;
    sum.retail = Sale{Money::of(15), Money::of(1.5), range(-0.75, -2, 0.5), range(-1, -2, 1)};
    EXPECT_EQ(retail_words(toy, sum),
              QStringLiteral("Sold at 15.00 kr less 1.50 kr of fees, 0.75 kr (-0.50 to 2.00) is lost."));
    sum.retail->left = range(5, 4, 6);
    sum.retail->an_hour = range(2.5, 2, 3);
    EXPECT_EQ(retail_words(toy, sum),
              QStringLiteral("Sold at 15.00 kr less 1.50 kr of fees, 5.00 kr (4.00 to 6.00) is left: "
                             "2.50 kr (2.00 to 3.00) an hour."));
}

}  // namespace
}  // namespace roundwright
