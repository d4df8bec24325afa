#pragma once

#include <QString>

#include "core/materials/earnings.h"
#include "render/wording/length_unit.h"

namespace roundwright {

/// "12.50 EUR": to the hundredth, the currency as the maker wrote it.
[[nodiscard]] QString money_words(Money money, const std::string& currency);
/// "12.50 EUR (10.20 to 15.00)"; without the range where both ends print the same.
[[nodiscard]] QString money_words(const MoneyRange& range, const std::string& currency);

/// "Foam: 38 m (29 to 46), 15 g (12 to 19), 1 ball": what so many toys, or pieces, take of a yarn.
[[nodiscard]] QString yarn_taken_words(const Yarn& yarn, const YarnUse& use, std::optional<int> balls,
                                       LengthUnit units);
/// "Stuffing: 15 g (12 to 19)".
[[nodiscard]] QString stuffing_taken_words(const Estimate& grams);
/// "Pellets: 40 g"; empty where there are none.
[[nodiscard]] QString pellets_taken_words(double grams);
/// "Time to crochet: 3 h (2 h to 5 h)".
[[nodiscard]] QString time_taken_words(const Estimate& minutes);

/// What goes in: materials and hours. A sentence a line.
[[nodiscard]] QString cost_words(const Toy& toy, const Earnings& earnings);
/// What comes out at a price, or what is to be typed to know.
[[nodiscard]] QString retail_words(const Toy& toy, const Earnings& earnings);
[[nodiscard]] QString wholesale_words(const Toy& toy, const Earnings& earnings);
/// The price that pays everything; empty without a rate an hour.
[[nodiscard]] QString fair_price_words(const Toy& toy, const Earnings& earnings);
/// Which prices are missing; empty: none.
[[nodiscard]] QString unpriced_words(const Toy& toy, const Earnings& earnings);

}  // namespace roundwright
