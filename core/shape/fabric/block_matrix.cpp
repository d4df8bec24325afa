#include "core/shape/fabric/block_matrix.h"

#include <algorithm>

namespace roundwright {

void BlockMatrix::set_zero() {
    std::ranges::fill(diagonal_, Block::Zero());
    std::ranges::fill(beside_, Block::Zero());
}

void BlockMatrix::fix(std::span<const char> is_fixed) {
    const auto fixed = [&](std::int32_t node) { return is_fixed[static_cast<std::size_t>(node)] != 0; };
    for (std::size_t i = 0; i < diagonal_.size(); ++i)
        if (is_fixed[i] != 0) diagonal_[i].setIdentity();
    for (std::size_t k = 0; k < pairs_.size(); ++k)
        if (fixed(pairs_[k][0]) || fixed(pairs_[k][1])) beside_[k].setZero();
}

void BlockMatrix::multiply(const double* vector, double* out) const {
    for (std::size_t i = 0; i < diagonal_.size(); ++i) {
        const double* m = diagonal_[i].data();
        const double* v = vector + 3 * i;
        for (std::size_t r = 0; r < 3; ++r) out[3 * i + r] = m[r] * v[0] + m[3 + r] * v[1] + m[6 + r] * v[2];
    }
    for (std::size_t k = 0; k < pairs_.size(); ++k) {
        const double* m = beside_[k].data();  // by columns
        const std::ptrdiff_t i = 3 * static_cast<std::ptrdiff_t>(pairs_[k][0]);
        const std::ptrdiff_t j = 3 * static_cast<std::ptrdiff_t>(pairs_[k][1]);
        const double* vi = vector + i;
        const double* vj = vector + j;
        for (std::ptrdiff_t r = 0; r < 3; ++r) {
            out[i + r] += m[r] * vj[0] + m[3 + r] * vj[1] + m[6 + r] * vj[2];
            out[j + r] += m[3 * r] * vi[0] + m[3 * r + 1] * vi[1] + m[3 * r + 2] * vi[2];
        }
    }
}

double BlockMatrix::mean_diagonal() const {
    double sum = 0;
    for (const Block& block : diagonal_) sum += block.trace();
    return diagonal_.empty() ? 0 : sum / (3 * static_cast<double>(diagonal_.size()));
}

}  // namespace roundwright
