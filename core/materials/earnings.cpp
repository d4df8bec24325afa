#include "core/materials/earnings.h"

#include <algorithm>

namespace roundwright {
namespace {

constexpr double minutes_an_hour = 60;

void find_unpriced(Earnings& sum, const Toy& toy, const Materials& materials) {
    for (std::size_t i = 0; i < toy.yarns.size(); ++i) {
        const bool is_priced = i < materials.cost.yarn.size() && materials.cost.yarn[i].has_value();
        if (!is_priced && materials.yarns[i].grams.high > 0) sum.unpriced.push_back(i);
    }
    sum.stuffing_unpriced = !materials.cost.stuffing && materials.stuffing_g.high > 0;
}

MoneyRange materials_cost(const Cost& cost) {
    MoneyRange sum = money_range(exactly(cost.other));
    for (const auto& yarn : cost.yarn)
        if (yarn) sum += money_range(*yarn);
    if (cost.stuffing) sum += money_range(*cost.stuffing);
    return sum;
}

MoneyRange an_hour(const MoneyRange& left, const Estimate& minutes) {
    const auto over = [](Money money, double of_minutes) {
        return money.times(minutes_an_hour / of_minutes);
    };
    // A loss is the worse the sooner it is made.
    const bool gains = left.low >= Money();
    return {over(left.likely, minutes.likely), over(left.low, gains ? minutes.high : minutes.low),
            over(left.high, left.high >= Money() ? minutes.low : minutes.high)};
}

Sale sale(Money price, double fees_percent, const Earnings& sum) {
    Sale sale;
    sale.price = price;
    sale.fees = price.times(fees_percent / 100);
    const Money got = price - sale.fees;
    sale.left = {got - sum.materials.likely, got - sum.materials.high, got - sum.materials.low};
    if (sum.minutes.low > 0) sale.an_hour = an_hour(sale.left, sum.minutes);
    return sale;
}

/// The price of which the fees leave this much.
MoneyRange before_fees(const MoneyRange& range, double fees_percent) {
    const double share = 1 / (1 - fees_percent / 100);
    return {range.likely.times(share), range.low.times(share), range.high.times(share)};
}

}  // namespace

MoneyRange money_range(const Estimate& units) {
    return {Money::of(units.likely), Money::of(units.low), Money::of(units.high)};
}

Earnings earnings(const Toy& toy, const Materials& materials) {
    const Making& making = toy.making;
    const double fees = making.fees_percent.value_or(0);
    Earnings sum;
    find_unpriced(sum, toy, materials);
    sum.materials = materials_cost(materials.cost);
    sum.minutes = materials.minutes + exactly(making.finishing_minutes.value_or(0));
    if (making.hourly_rate) sum.work = money_range(sum.minutes * (*making.hourly_rate / minutes_an_hour));
    if (making.price) sum.retail = sale(Money::of(*making.price), fees, sum);
    if (making.wholesale_price) sum.wholesale = sale(Money::of(*making.wholesale_price), 0, sum);
    if (sum.work && fees < 100) {
        MoneyRange all = sum.materials;
        all += *sum.work;
        sum.fair_price = before_fees(all, fees);
    }
    return sum;
}

std::vector<std::optional<int>> balls_for(const Toy& toy, const Materials& materials, int toys) {
    std::vector<std::optional<int>> balls;
    const double times = toys * (1 + toy.making.spare_yarn_percent.value_or(0) / 100);
    for (std::size_t i = 0; i < std::min(toy.yarns.size(), materials.yarns.size()); ++i)
        balls.push_back(balls_to_buy(toy.yarns[i], materials.yarns[i].grams * times));
    return balls;
}

}  // namespace roundwright
