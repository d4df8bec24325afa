#pragma once

#include <Eigen/Core>
#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace roundwright {

/// A symmetric matrix of 3 by 3 blocks, a row of them for each node and a block for each pair of nodes that
/// was named. A pair may be named more than once: its blocks add up.
class BlockMatrix {
  public:
    using Block = Eigen::Matrix3d;
    using Pair = std::array<std::int32_t, 2>;

    BlockMatrix() = default;
    BlockMatrix(std::size_t nodes, std::vector<Pair> pairs)
        : pairs_(std::move(pairs)), diagonal_(nodes), beside_(pairs_.size()) {}

    [[nodiscard]] std::size_t nodes() const { return diagonal_.size(); }
    [[nodiscard]] std::span<const Pair> pairs() const { return pairs_; }
    [[nodiscard]] const Block& diagonal(std::size_t node) const { return diagonal_[node]; }
    /// In the rows of the pair's first node and the columns of its second.
    [[nodiscard]] const Block& beside(std::size_t pair) const { return beside_[pair]; }
    [[nodiscard]] Block& diagonal(std::size_t node) { return diagonal_[node]; }
    [[nodiscard]] Block& beside(std::size_t pair) { return beside_[pair]; }

    void set_zero();
    /// Makes a node's rows and columns those of the unit matrix.
    void fix(std::span<const char> is_fixed);
    /// out = matrix * vector; both have three entries a node.
    void multiply(const double* vector, double* out) const;
    [[nodiscard]] double mean_diagonal() const;

  private:
    std::vector<Pair> pairs_;
    std::vector<Block> diagonal_;
    std::vector<Block> beside_;
};

}  // namespace roundwright
