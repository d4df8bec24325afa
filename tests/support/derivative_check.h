#pragma once

#include <cmath>
#include <cstddef>
#include <functional>
#include <gtest/gtest.h>
#include <vector>

namespace roundwright::test {

/// Which unknowns may not move: a fixed one has no gradient, and the unit matrix's row and column.
using IsFixed = std::function<bool(std::size_t)>;

inline bool none_is_fixed(std::size_t) { return false; }

/// How near derivatives must come to differences: to `relative` of 1 + |derivative|.
struct DerivativeCheck {
    double step = 1e-5;
    double relative = 1e-6;
    IsFixed is_fixed = none_is_fixed;
};

/// (f(x + h e_i) - f(x - h e_i)) / 2h, off by O(h^2).
template <class Function>
double central_difference(const Function& f, std::vector<double> x, std::size_t i, double step) {
    x[i] += step;
    const double above = f(x);
    x[i] -= 2 * step;
    return (above - f(x)) / (2 * step);
}

/// Whether `gradient` holds the derivatives of `value` at x.
template <class Value>
testing::AssertionResult is_gradient(const std::vector<double>& gradient, const Value& value,
                                     const std::vector<double>& x, const DerivativeCheck& check = {}) {
    if (gradient.size() != x.size()) return testing::AssertionFailure() << "of another size";
    for (std::size_t i = 0; i < x.size(); ++i) {
        const bool fixed = check.is_fixed(i);
        const double expected = fixed ? 0 : central_difference(value, x, i, check.step);
        const double allowed = fixed ? 0 : check.relative * (1 + std::abs(expected));
        if (!(std::abs(gradient[i] - expected) <= allowed))
            return testing::AssertionFailure()
                   << "by unknown " << i << ": " << gradient[i] << ", by differences " << expected;
    }
    return testing::AssertionSuccess();
}

/// Whether `entry(row, column)` is the matrix of second derivatives at x of what `gradient` (of x, a vector)
/// is the gradient of.
template <class Entry, class Gradient>
testing::AssertionResult is_hessian(const Entry& entry, const Gradient& gradient,
                                    const std::vector<double>& x, const DerivativeCheck& check = {}) {
    for (std::size_t column = 0; column < x.size(); ++column) {
        for (std::size_t row = 0; row < x.size(); ++row) {
            const auto force = [&](const std::vector<double>& at) { return gradient(at)[row]; };
            const bool fixed = check.is_fixed(row) || check.is_fixed(column);
            const double expected =
                fixed ? (row == column ? 1 : 0) : central_difference(force, x, column, check.step);
            const double allowed = fixed ? 0 : check.relative * (1 + std::abs(expected));
            if (!(std::abs(entry(row, column) - expected) <= allowed))
                return testing::AssertionFailure() << "at " << row << ", " << column << ": "
                                                   << entry(row, column) << ", by differences " << expected;
        }
    }
    return testing::AssertionSuccess();
}

}  // namespace roundwright::test
