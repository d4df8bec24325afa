#include "core/shape/band_matrix.h"

#include <algorithm>
#include <cmath>
#include <type_traits>

namespace roundwright {

void BandMatrix::resize(std::size_t size) { columns_.resize(size); }

void BandMatrix::set_zero() { std::fill(columns_.begin(), columns_.end(), Column{}); }

double BandMatrix::largest_diagonal() const {
    double largest = 0;
    for (const Column& column : columns_) largest = std::max(largest, std::abs(column[0]));
    return largest;
}

double BandMatrix::entry(std::size_t row, std::size_t column) const {
    if (row < column) std::swap(row, column);
    return row - column > half_bandwidth ? 0.0 : columns_[column][row - column];
}

void BandMatrix::fix(std::size_t i) {
    columns_[i] = Column{1.0};
    for (std::size_t k = 1; k <= std::min(i, half_bandwidth); ++k) columns_[i - k][k] = 0;
}

// Golub and Van Loan, Matrix Computations, 4.3.6: band L D L^T, right-looking.
std::size_t BandMatrix::factor(double smallest_pivot) {
    std::size_t negative = 0;
    const std::size_t n = columns_.size();
    const auto eliminate = [&](std::size_t j, auto last) {
        Column& column = columns_[j];
        if (!(std::abs(column[0]) > smallest_pivot)) column[0] = smallest_pivot;
        if (column[0] < 0) ++negative;
        const double inverse = 1 / column[0];
        for (std::size_t k = 1; k <= last; ++k) {
            const double l = column[k] * inverse;
            Column& below = columns_[j + k];
            for (std::size_t m = k; m <= last; ++m) below[m - k] -= l * column[m];
        }
        for (std::size_t k = 1; k <= last; ++k) column[k] *= inverse;
        column[0] = inverse;
    };
    // A constant count lets the compiler unroll the loops.
    constexpr auto full = std::integral_constant<std::size_t, half_bandwidth>{};
    std::size_t j = 0;
    for (; j + half_bandwidth < n; ++j) eliminate(j, full);
    for (; j < n; ++j) eliminate(j, n - 1 - j);
    return negative;
}

// Both sweeps take the nearest neighbour last, so that one step waits for one product only.
template <std::size_t count>
void BandMatrix::solve_for(const std::array<double*, count>& right_sides) const {
    const std::size_t n = columns_.size();
    const auto forward = [&](std::size_t j, auto first) {
        for (double* x : right_sides) {
            double sum = x[j];
            for (std::size_t k = first; k > 0; --k) sum -= columns_[j - k][k] * x[j - k];
            x[j] = sum;
        }
    };
    const auto backward = [&](std::size_t j, auto last) {
        const Column& column = columns_[j];
        for (double* x : right_sides) {
            double sum = x[j] * column[0];
            for (std::size_t k = last; k > 0; --k) sum -= column[k] * x[j + k];
            x[j] = sum;
        }
    };
    constexpr auto full = std::integral_constant<std::size_t, half_bandwidth>{};
    const std::size_t edge = std::min(half_bandwidth, n);
    for (std::size_t j = 0; j < edge; ++j) forward(j, j);
    for (std::size_t j = edge; j < n; ++j) forward(j, full);
    for (std::size_t j = n; j-- > n - edge;) backward(j, n - 1 - j);
    for (std::size_t j = n - edge; j-- > 0;) backward(j, full);
}

void BandMatrix::solve(double* right_side) const { solve_for<1>({right_side}); }

void BandMatrix::solve(double* right_side, double* another) const { solve_for<2>({right_side, another}); }

}  // namespace roundwright
