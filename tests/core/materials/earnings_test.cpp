#include "core/materials/earnings.h"

#include <gtest/gtest.h>

namespace roundwright {
namespace {

/// 25 g of a ball of 50 g at 4.00, 100 g of stuffing at 10.00 a kilogram, 0.50 of eyes: 3.50 in all.
struct Sold {
    Toy toy;
    Materials materials;

    Sold() {
        Yarn yarn;
        yarn.ball_grams = 50;
        yarn.ball_price = 4;
        toy.yarns = {yarn};
        toy.making.stuffing_price_per_kg = 10;
        toy.making.other_cost = 0.5;
        toy.making.hourly_rate = 12;
        toy.making.finishing_minutes = 30;
        toy.making.fees_percent = 10;
        toy.making.price = 40;
        toy.making.wholesale_price = 20;
        work({25, 20, 30});
    }
    void work(const Estimate& grams) {
        materials.yarns = {{{}, grams, {}}};
        materials.stuffing_g = {100, 90, 110};
        materials.minutes = {90, 60, 120};
        materials.cost = cost(toy.yarns, {grams}, materials.stuffing_g, materials.minutes, toy.making);
    }
    [[nodiscard]] Earnings earned() const { return earnings(toy, materials); }
};

TEST(Earnings, AreWhatTheyAreOnPaper) {
    const Earnings sum = Sold().earned();
    EXPECT_EQ(sum.materials, (MoneyRange{Money::of(3.5), Money::of(3), Money::of(4)}));
    EXPECT_EQ(sum.minutes, (Estimate{120, 90, 150}));
    EXPECT_EQ(*sum.work, (MoneyRange{Money::of(24), Money::of(18), Money::of(30)}));
    // 40 less a tenth is 36.
    EXPECT_EQ(sum.retail->fees, Money::of(4));
    EXPECT_EQ(sum.retail->left, (MoneyRange{Money::of(32.5), Money::of(32), Money::of(33)}));
    EXPECT_EQ(*sum.retail->an_hour, (MoneyRange{Money::of(16.25), Money::of(12.8), Money::of(22)}));
    EXPECT_EQ(sum.wholesale->fees, Money());
    EXPECT_EQ(sum.wholesale->left.likely, Money::of(16.5));
    // (3.50 + 24.00) / 0.9
    EXPECT_EQ(sum.fair_price->likely.rounded_to(2), Money::of(30.56));
}

TEST(Earnings, AFairPriceLeavesTheMakersRate) {
    Sold sold;
    sold.toy.making.price = sold.earned().fair_price->likely.units();
    EXPECT_EQ(sold.earned().retail->an_hour->likely.rounded_to(2), Money::of(12));
}

TEST(Earnings, ALossAnHourIsWorstWhereItIsMadeSoonest) {
    Sold sold;
    sold.toy.making.price = 1;
    const MoneyRange hour = *sold.earned().retail->an_hour;
    EXPECT_EQ(sold.earned().retail->left.low, Money::of(0.9 - 4));
    EXPECT_EQ(hour.low, Money::of(-3.1).times(60.0 / 90));
    EXPECT_LE(hour.low, hour.likely);
    EXPECT_LE(hour.likely, hour.high);
}

TEST(Earnings, SayWhichPricesAreMissing) {
    Sold sold;
    sold.toy.yarns[0].ball_price.reset();
    sold.toy.making.stuffing_price_per_kg.reset();
    sold.work({25, 20, 30});
    EXPECT_EQ(sold.earned().unpriced, std::vector<std::size_t>{0});
    EXPECT_TRUE(sold.earned().stuffing_unpriced);
    EXPECT_EQ(sold.earned().materials.likely, Money::of(0.5));
    sold.toy.making.hourly_rate.reset();
    EXPECT_FALSE(sold.earned().work);
    EXPECT_FALSE(sold.earned().fair_price);
}

TEST(Earnings, NoPriceIsFairWhereFeesTakeItAll) {
    Sold sold;
    sold.toy.making.fees_percent = 100;
    EXPECT_FALSE(sold.earned().fair_price);
}

TEST(Earnings, ABatchSharesItsBalls) {
    Sold sold;
    EXPECT_EQ(balls_for(sold.toy, sold.materials, 1), std::vector<std::optional<int>>{1});
    EXPECT_EQ(balls_for(sold.toy, sold.materials, 5), std::vector<std::optional<int>>{3}) << "5 x 30 g";
    sold.toy.making.spare_yarn_percent = 10;
    EXPECT_EQ(balls_for(sold.toy, sold.materials, 5), std::vector<std::optional<int>>{4}) << "165 g";
    sold.toy.yarns[0].ball_grams.reset();
    EXPECT_EQ(balls_for(sold.toy, sold.materials, 5), std::vector<std::optional<int>>{std::nullopt});
}

}  // namespace
}  // namespace roundwright
