#pragma once

#include <array>
#include <cstddef>
#include <vector>

namespace roundwright {

/// A symmetric matrix of half bandwidth 5 (two unknowns a node, coupled to the two nodes on either side),
/// factored in place as L D L^T without pivoting: O(n) time, no allocation once sized.
///
/// Sylvester's law of inertia: the number of negative entries of D is the number of negative eigenvalues.
class BandMatrix {
  public:
    static constexpr std::size_t half_bandwidth = 5;

    void resize(std::size_t size);
    void set_zero();
    [[nodiscard]] std::size_t size() const { return columns_.size(); }

    /// Adds to the entry at (row, column) with row >= column >= row - 5; the upper half is implied.
    void add(std::size_t row, std::size_t column, double value) { columns_[column][row - column] += value; }
    [[nodiscard]] double diagonal(std::size_t i) const { return columns_[i][0]; }
    [[nodiscard]] double largest_diagonal() const;
    [[nodiscard]] double entry(std::size_t row, std::size_t column) const;

    /// Takes unknown i out of the system: its row and column become those of the unit matrix.
    void fix(std::size_t i);

    /// Factors the matrix in place. A pivot nearer to zero than `smallest_pivot` is replaced by it.
    /// Gives the number of negative pivots.
    std::size_t factor(double smallest_pivot);

    /// Solves in place after `factor`. A right side has `size()` entries. Two at once take little longer than
    /// one.
    void solve(double* right_side) const;
    void solve(double* right_side, double* another) const;

  private:
    using Column = std::array<double, half_bandwidth + 1>;

    template <std::size_t count>
    void solve_for(const std::array<double*, count>& right_sides) const;

    std::vector<Column> columns_;  ///< diagonal and what is below it; after `factor`, 1 / D and L
};

}  // namespace roundwright
