#include "core/shape/fabric/block_factor.h"

#include <Eigen/Cholesky>
#include <gtest/gtest.h>
#include <random>
#include <set>

#include "core/shape/fabric/conjugate_gradients.h"
#include "core/shape/fabric/fabric_energy.h"
#include "tests/support/fabric_piece.h"

namespace roundwright::test {
namespace {

struct Case {
    FabricPiece piece;
    BlockMatrix matrix;
};

Case positive_definite() {
    Case c{round_piece({6, 12, 18, 24, 24, 18, 12, 6}), {}};
    const FabricEnergy energy(c.piece.problem, *topology_of(c.piece.problem));
    Positions x;
    for (const Vec3& node : c.piece.start) x.insert(x.end(), {node.x(), node.y(), node.z()});
    c.matrix = energy.one_ring_matrix();
    energy.one_ring_majorant(x, c.matrix);
    return c;
}

Eigen::MatrixXd dense(const BlockMatrix& matrix) {
    const auto size = static_cast<Eigen::Index>(3 * matrix.nodes());
    Eigen::MatrixXd out(size, size);
    Eigen::VectorXd unit = Eigen::VectorXd::Zero(size);
    for (Eigen::Index i = 0; i < size; ++i) {
        unit[i] = 1;
        matrix.multiply(unit.data(), out.col(i).data());
        unit[i] = 0;
    }
    return out;
}

BlockFactor factor_of(const Case& c) {
    return {c.matrix.nodes(), c.matrix.pairs(),
            nested_dissection(c.matrix.nodes(), c.matrix.pairs(), c.piece.start)};
}

TEST(NestedDissection, HasEveryNodeOnceAndSeparatesWhatItDivides) {
    const Case c = positive_definite();
    const auto parts = nested_dissection(c.matrix.nodes(), c.matrix.pairs(), c.piece.start);
    std::vector<std::int32_t> part_of(c.matrix.nodes(), -1);
    std::vector<std::int32_t> parent(parts.size(), -1);
    for (std::size_t p = 0; p < parts.size(); ++p) {
        for (const std::int32_t node : parts[p].nodes) {
            EXPECT_EQ(part_of[static_cast<std::size_t>(node)], -1);
            part_of[static_cast<std::size_t>(node)] = static_cast<std::int32_t>(p);
        }
        for (const std::int32_t child : parts[p].children)
            if (child != DissectionPart::none)
                parent[static_cast<std::size_t>(child)] = static_cast<std::int32_t>(p);
    }
    EXPECT_EQ(std::ranges::count(part_of, -1), 0);
    const auto is_above = [&](std::int32_t a, std::int32_t b) {
        for (; b != -1; b = parent[static_cast<std::size_t>(b)])
            if (a == b) return true;
        return false;
    };
    for (const auto& [a, b] : c.matrix.pairs()) {
        const std::int32_t p = part_of[static_cast<std::size_t>(a)];
        const std::int32_t q = part_of[static_cast<std::size_t>(b)];
        EXPECT_TRUE(is_above(p, q) || is_above(q, p));
    }
}

TEST(BlockFactor, SolvesAsADenseFactorDoes) {
    const Case c = positive_definite();
    BlockFactor factor = factor_of(c);
    const double shift = 1e-2 * c.matrix.mean_diagonal();
    ASSERT_TRUE(factor.factor(c.matrix, shift));
    Eigen::MatrixXd whole = dense(c.matrix);
    whole.diagonal().array() += shift;
    const Eigen::VectorXd right = Eigen::VectorXd::LinSpaced(whole.rows(), -1, 2);
    Eigen::VectorXd found(whole.rows());
    factor.solve(right.data(), found.data());
    const Eigen::VectorXd expected = whole.llt().solve(right);
    EXPECT_LT((found - expected).norm(), 1e-3 * expected.norm());  // single precision
}

TEST(BlockFactor, SaysWhatIsNotPositiveDefinite) {
    Case c = positive_definite();
    BlockFactor factor = factor_of(c);
    EXPECT_TRUE(factor.factor(c.matrix, 1e-5 * c.matrix.mean_diagonal()));
    c.matrix.diagonal(20) -= 1e3 * BlockMatrix::Block::Identity();
    EXPECT_FALSE(factor.factor(c.matrix, 1e-5 * c.matrix.mean_diagonal()));
}

TEST(ConjugateGradients, FindTheSolutionInAsManyStepsAsThereAreEigenvalues) {
    const Eigen::Vector4d diagonal(1, 1, 4, 9);
    const Eigen::VectorXd b = Eigen::Vector4d(1, 2, 3, 4);
    Eigen::VectorXd x;
    const auto end = conjugate_gradients(
        b, [&](const Eigen::VectorXd& v, Eigen::VectorXd& out) { out = diagonal.cwiseProduct(v); },
        [](const Eigen::VectorXd& v, Eigen::VectorXd& out) { out = v; }, {1e-12, 40}, x);
    EXPECT_TRUE(end.reached);
    EXPECT_LE(end.steps, 3);
    EXPECT_LT((diagonal.cwiseProduct(x) - b).norm(), 1e-12);
}

TEST(ConjugateGradients, SayWhereTheCurvatureIsNegative) {
    const Eigen::Vector3d diagonal(1, -2, 4);
    const Eigen::VectorXd b = Eigen::Vector3d(1, 1, 1);
    Eigen::VectorXd x;
    const auto end = conjugate_gradients(
        b, [&](const Eigen::VectorXd& v, Eigen::VectorXd& out) { out = diagonal.cwiseProduct(v); },
        [](const Eigen::VectorXd& v, Eigen::VectorXd& out) { out = v; }, {1e-12, 40}, x);
    ASSERT_TRUE(end.negative_curvature);
    EXPECT_LT(end.downhill.dot(diagonal.cwiseProduct(end.downhill)), 0);
    EXPECT_GT(b.dot(end.downhill), 0);
}

}  // namespace
}  // namespace roundwright::test
