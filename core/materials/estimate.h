#pragma once

namespace roundwright {

/// A figure that is only known to lie in a range: the likely value, and the ends.
struct Estimate {
    double likely = 0;
    double low = 0;
    double high = 0;

    Estimate& operator+=(const Estimate& other) {
        likely += other.likely;
        low += other.low;
        high += other.high;
        return *this;
    }
    friend Estimate operator+(Estimate a, const Estimate& b) { return a += b; }
    friend Estimate operator*(const Estimate& a, double factor) {
        return {a.likely * factor, a.low * factor, a.high * factor};
    }
    /// Of positive figures: the ends are the furthest that the two allow together.
    friend Estimate operator*(const Estimate& a, const Estimate& b) {
        return {a.likely * b.likely, a.low * b.low, a.high * b.high};
    }
    friend bool operator==(const Estimate&, const Estimate&) = default;
};

/// A figure that is known.
[[nodiscard]] constexpr Estimate exactly(double value) { return {value, value, value}; }

}  // namespace roundwright
