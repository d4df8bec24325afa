#pragma once

#include <optional>
#include <vector>

#include "core/materials/materials.h"
#include "core/materials/money.h"

namespace roundwright {

/// Money that is only known to lie in a range.
struct MoneyRange {
    Money likely;
    Money low;
    Money high;

    MoneyRange& operator+=(const MoneyRange& other) {
        likely += other.likely;
        low += other.low;
        high += other.high;
        return *this;
    }
    friend bool operator==(const MoneyRange&, const MoneyRange&) = default;
};

[[nodiscard]] MoneyRange money_range(const Estimate& units);

/// What a toy that is sold at a price leaves.
struct Sale {
    Money price;
    Money fees;       ///< the fees' share of the price
    MoneyRange left;  ///< price less fees and materials; low where materials cost most
    /// `left` over the hours of work; absent where no work is known. Its low end takes the most hours.
    std::optional<MoneyRange> an_hour;
};

/// One toy: what goes in, and what comes out. Taxes are in none of it.
struct Earnings {
    MoneyRange materials;               ///< yarn, stuffing and other costs, as far as their prices are known
    std::vector<std::size_t> unpriced;  ///< yarns that are used and have no price
    bool stuffing_unpriced = false;
    Estimate minutes;                ///< at the hook, and sewing and finishing
    std::optional<MoneyRange> work;  ///< minutes at the maker's rate an hour
    std::optional<Sale> retail;
    std::optional<Sale> wholesale;  ///< without fees: a market place takes them of what it sells
    /// The price that pays the materials, the rate an hour and the fees; absent without a rate, or where the
    /// fees take all.
    std::optional<MoneyRange> fair_price;
};

/// `materials`: of one toy.
[[nodiscard]] Earnings earnings(const Toy& toy, const Materials& materials);

/// Whole balls of each yarn for so many toys with a share to spare, in percent; nothing where the weight of a
/// ball is not known. A ball that is begun for one toy serves the next.
[[nodiscard]] std::vector<std::optional<int>> balls_for(const Toy& toy, const Materials& materials, int toys);

}  // namespace roundwright
