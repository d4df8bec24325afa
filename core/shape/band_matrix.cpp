#include "core/shape/band_matrix.h"

#include <algorithm>
#include <cmath>

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
    for (std::size_t j = 0; j < n; ++j) {
        Column& column = columns_[j];
        if (!(std::abs(column[0]) > smallest_pivot)) column[0] = smallest_pivot;
        if (column[0] < 0) ++negative;
        const double inverse = 1 / column[0];
        const std::size_t last = std::min(half_bandwidth, n - 1 - j);
        for (std::size_t k = 1; k <= last; ++k) {
            const double l = column[k] * inverse;
            Column& below = columns_[j + k];
            for (std::size_t m = k; m <= half_bandwidth; ++m) below[m - k] -= l * column[m];
        }
        for (std::size_t k = 1; k <= half_bandwidth; ++k) column[k] *= inverse;
    }
    return negative;
}

void BandMatrix::solve(double* right_side) const {
    const std::size_t n = columns_.size();
    for (std::size_t j = 0; j < n; ++j) {
        const std::size_t last = std::min(half_bandwidth, n - 1 - j);
        for (std::size_t k = 1; k <= last; ++k) right_side[j + k] -= columns_[j][k] * right_side[j];
    }
    for (std::size_t j = n; j-- > 0;) {
        const std::size_t last = std::min(half_bandwidth, n - 1 - j);
        double x = right_side[j] / columns_[j][0];
        for (std::size_t k = 1; k <= last; ++k) x -= columns_[j][k] * right_side[j + k];
        right_side[j] = x;
    }
}

}  // namespace roundwright
