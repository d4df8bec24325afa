#pragma once

#include <algorithm>
#include <cmath>
#include <compare>
#include <cstdint>

namespace roundwright {

/// An amount of money, exact: a whole number of ten-thousandths of the currency's unit, which divides the
/// smallest coin of every currency of ISO 4217. Sums are exact; a share is rounded once, to the nearest, and
/// away from 0 where two are as near.
class Money {
  public:
    constexpr Money() = default;
    /// The nearest amount to a number as it is typed or read. Beyond the range the end of the range.
    [[nodiscard]] static Money of(double units) {
        constexpr double most = 9.0e18;
        return Money(static_cast<std::int64_t>(std::clamp(std::round(units * parts), -most, most)));
    }

    [[nodiscard]] double units() const { return static_cast<double>(parts_) / parts; }
    [[nodiscard]] std::int64_t ten_thousandths() const { return parts_; }
    /// As it is paid and printed: to so many decimals of the unit, 0 to 4.
    [[nodiscard]] Money rounded_to(int decimals) const;
    /// So many times, or such a part, rounded to the nearest ten-thousandth.
    [[nodiscard]] Money times(double factor) const { return of(units() * factor); }

    friend Money operator+(Money a, Money b) { return Money(a.parts_ + b.parts_); }
    friend Money operator-(Money a, Money b) { return Money(a.parts_ - b.parts_); }
    friend Money operator*(Money a, int times) { return Money(a.parts_ * times); }
    Money& operator+=(Money other) { return *this = *this + other; }
    friend auto operator<=>(Money, Money) = default;

  private:
    static constexpr std::int64_t parts = 10'000;
    explicit constexpr Money(std::int64_t of_parts) : parts_(of_parts) {}

    std::int64_t parts_ = 0;
};

}  // namespace roundwright
