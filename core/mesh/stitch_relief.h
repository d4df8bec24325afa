#pragma once

#include <cstddef>
#include <vector>

#include "core/mesh/stitch_cords.h"

namespace roundwright {

/// How many columns and rows of little faces a stitch is drawn with.
struct ReliefGrid {
    int columns = 1;
    int rows = 1;

    [[nodiscard]] std::size_t triangles() const { return 2u * static_cast<std::size_t>(columns * rows); }
    /// Of the inner skin: it has less to show.
    [[nodiscard]] ReliefGrid inside() const { return {columns, rows > 3 ? rows / 2 : 1}; }
};

/// The finest grid with which `stitches` stitches, with an inner skin or without, stay within
/// `most_triangles`; one face a stitch at least.
[[nodiscard]] ReliefGrid finest_relief(std::size_t stitches, std::size_t most_triangles, bool inside);

/// Height of a stitch's cords over its deepest hollow, in stitch widths. u runs across and v up the stitch,
/// both 0..1; v = 1 is the groove between rounds.
[[nodiscard]] double stitch_relief(StitchFace face, double u, double v);

/// `stitch_relief` on a grid: row v = j / rows, j = 1..rows, column u = q / columns, q = 0..columns - 1, with
/// its mean taken off. Row `rows` is the groove on the edge above, which the next round's row 0 shares.
struct ReliefTable {
    ReliefGrid grid;
    std::vector<float> height;            ///< [(j - 1) * columns + q], in stitch widths
    std::vector<float> light;             ///< share of light that gets there, 0..1: less in the grooves
    std::vector<double> row_mean;         ///< of the heights of row j, at [j - 1]
    std::vector<double> row_mean_square;  ///< and of their squares

    ReliefTable(StitchFace face, ReliefGrid grid, bool relief);
    [[nodiscard]] std::size_t at(int row, int column) const {
        return static_cast<std::size_t>((row - 1) * grid.columns + column);
    }
};

/// The tables of all faces on one grid; the inside's on its own.
class Reliefs {
  public:
    Reliefs(ReliefGrid grid, bool relief);
    [[nodiscard]] const ReliefGrid& grid() const { return tables_.front().grid; }
    [[nodiscard]] const ReliefTable& of(StitchFace face) const {
        return tables_[static_cast<std::size_t>(face)];
    }

  private:
    std::vector<ReliefTable> tables_;
};

}  // namespace roundwright
