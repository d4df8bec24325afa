#include "core/shape/band_matrix.h"

#include <Eigen/Dense>
#include <algorithm>
#include <gtest/gtest.h>
#include <random>

namespace roundwright::test {
namespace {

struct Both {
    BandMatrix band;
    Eigen::MatrixXd dense;
};

Both random_matrix(std::size_t size, double diagonal, unsigned number) {
    std::mt19937 random(number);
    std::normal_distribution<double> entry;
    Both both{{}, Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(size), static_cast<Eigen::Index>(size))};
    both.band.resize(size);
    both.band.set_zero();
    for (std::size_t row = 0; row < size; ++row)
        for (std::size_t column = row - std::min(row, BandMatrix::half_bandwidth); column <= row; ++column) {
            const double value = entry(random) + (row == column ? diagonal : 0);
            both.band.add(row, column, value);
            both.dense(static_cast<Eigen::Index>(row), static_cast<Eigen::Index>(column)) = value;
            both.dense(static_cast<Eigen::Index>(column), static_cast<Eigen::Index>(row)) = value;
        }
    return both;
}

class BandMatrixSizes : public testing::TestWithParam<std::size_t> {};

// Against the dense eigenvalues and solution of Eigen.
TEST_P(BandMatrixSizes, SolvesAndCountsNegativeEigenvalues) {
    for (unsigned number = 1; number <= 20; ++number) {
        Both both = random_matrix(GetParam(), number % 2 == 0 ? 8 : 0.5, number);
        const Eigen::VectorXd right = Eigen::VectorXd::LinSpaced(both.dense.rows(), -1, 2);
        const Eigen::VectorXd expected = both.dense.fullPivLu().solve(right);
        const Eigen::VectorXd eigenvalues =
            Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(both.dense).eigenvalues();
        EXPECT_EQ(both.band.factor(1e-300), static_cast<std::size_t>((eigenvalues.array() < 0).count()));
        Eigen::VectorXd solution = right;
        both.band.solve(solution.data());
        EXPECT_LT((both.dense * solution - right).norm(), 1e-8 * (1 + expected.norm()));
    }
}

INSTANTIATE_TEST_SUITE_P(Sizes, BandMatrixSizes, testing::Values(1u, 2u, 5u, 6u, 7u, 40u));

TEST(BandMatrix, LargestDiagonalIsThatOfTheDiagonalAlone) {
    BandMatrix band;
    band.resize(3);
    band.set_zero();
    EXPECT_EQ(band.largest_diagonal(), 0);
    band.add(0, 0, 2);
    band.add(1, 0, -9);
    band.add(1, 1, -3);
    band.add(2, 2, 1);
    EXPECT_EQ(band.largest_diagonal(), 3);
    EXPECT_EQ(band.entry(0, 1), -9);
    EXPECT_EQ(band.entry(0, 2), 0);
    EXPECT_EQ(band.diagonal(1), -3);
}

/// Two right sides at once come out as each by itself.
TEST(BandMatrix, SolvesTwoAtOnce) {
    Both both = random_matrix(23, 9, 4);
    both.band.factor(1e-300);
    std::vector<double> a(23), b(23);
    for (std::size_t i = 0; i < 23; ++i) {
        a[i] = static_cast<double>(i) - 7;
        b[i] = 1.0 / (1.0 + static_cast<double>(i));
    }
    std::vector<double> a_alone = a, b_alone = b;
    both.band.solve(a.data(), b.data());
    both.band.solve(a_alone.data());
    both.band.solve(b_alone.data());
    for (std::size_t i = 0; i < 23; ++i) {
        EXPECT_DOUBLE_EQ(a[i], a_alone[i]);
        EXPECT_DOUBLE_EQ(b[i], b_alone[i]);
    }
}

TEST(BandMatrix, APivotNearZeroIsReplaced) {
    BandMatrix band;
    band.resize(2);
    band.set_zero();
    band.add(1, 1, -4);
    EXPECT_EQ(band.factor(0.5), 1u);  // 0 becomes 0.5; -4 is further from 0
    std::vector<double> right{1, 8};
    band.solve(right.data());
    EXPECT_EQ(right, (std::vector<double>{2, -2}));
}

TEST(BandMatrix, FixedUnknownIsLeftOut) {
    Both both = random_matrix(9, 10, 3);
    both.band.fix(4);
    for (std::size_t i = 0; i < 9; ++i) EXPECT_EQ(both.band.entry(4, i), i == 4 ? 1 : 0);
    std::vector<double> right(9, 1.0);
    right[4] = 0;
    both.band.factor(1e-300);
    both.band.solve(right.data());
    EXPECT_EQ(right[4], 0);
}

}  // namespace
}  // namespace roundwright::test
