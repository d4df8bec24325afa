#pragma once

#include <Eigen/Core>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/shape/fabric/block_matrix.h"
#include "core/shape/fabric/nested_dissection.h"

namespace roundwright {

/// The Cholesky factor of a positive definite block matrix, part by part of a dissection: each part is a
/// dense front of its own nodes and of the later ones that it touches, and hands what is left of those on to
/// its parent (the multifrontal method: Duff and Reid, 1983; Liu, SIAM Review 34, 1992). In single precision,
/// since it only prepares the conjugate gradients: that is half the memory and twice the speed.
class BlockFactor {
  public:
    using Real = float;

    /// Which nodes each front has; once for each pattern.
    BlockFactor(std::size_t nodes, std::span<const BlockMatrix::Pair> pairs,
                std::vector<DissectionPart> parts);

    /// Of the matrix with `shift` added to its diagonal. False where it is not positive definite.
    [[nodiscard]] bool factor(const BlockMatrix& matrix, double shift);
    /// out = (L L^T)^-1 right; three entries a node.
    void solve(const double* right, double* out) const;
    /// Entries of L, about.
    [[nodiscard]] std::size_t entries() const;

  private:
    using Matrix = Eigen::Matrix<Real, Eigen::Dynamic, Eigen::Dynamic>;
    struct Front {
        std::vector<std::int32_t>
            nodes;  ///< its own first, then those that it touches, as they are eliminated
        std::int32_t own = 0;
        std::array<std::int32_t, 2> children{DissectionPart::none, DissectionPart::none};
        std::vector<std::int32_t> pairs;  ///< of the matrix, that are first eliminated here
        std::vector<std::int32_t> rows;   ///< where its parent has each of those that it touches
        Matrix lower;                     ///< L of its own columns
    };
    void take_nodes(std::size_t nodes, std::span<const BlockMatrix::Pair> pairs);
    void take_rows();
    void assemble(const Front& front, const BlockMatrix& matrix, Real shift, Matrix& dense);
    void add_children(const Front& front, Matrix& dense);
    [[nodiscard]] static bool eliminate(Matrix& dense, Eigen::Index own);

    std::vector<Front> fronts_;
    std::vector<Matrix> left_;         ///< what each front hands on, until its parent has taken it
    std::vector<std::int32_t> place_;  ///< scratch: of a node in the front that is being made
    std::size_t nodes_;
};

}  // namespace roundwright
