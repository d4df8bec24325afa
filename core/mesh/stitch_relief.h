#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
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

/// The grids that stitches are drawn with, from the finest down to one face a stitch. Columns are even so
/// that an increase meets the middle of a loop.
[[nodiscard]] std::span<const ReliefGrid> relief_grids();

/// Mean height of a stitch's cords over its deepest hollow, in stitch widths, over the part of its face that
/// a vertex of the grid stands for. u runs across and v up the stitch, both 0..1; v = 1 is where rounds meet.
[[nodiscard]] double stitch_relief(StitchFace face, double u, double v, const ReliefGrid& grid);

/// `stitch_relief` on a grid: row v = j / rows, j = 1..rows, column u = q / columns, q = 0..columns - 1, with
/// its mean taken off. Row `rows` lies on the edge above, which the next round's row 0 shares.
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

/// The tables of the faces that a fabric shows on one grid; the inside's on its own.
class Reliefs {
  public:
    /// With tables of `shown` and of the inside.
    Reliefs(ReliefGrid grid, bool relief, const std::vector<StitchFace>& shown);
    [[nodiscard]] const ReliefGrid& grid() const { return grid_; }
    [[nodiscard]] const ReliefTable& of(StitchFace face) const {
        return *tables_[static_cast<std::size_t>(face)];
    }

  private:
    ReliefGrid grid_;
    std::array<std::optional<ReliefTable>, stitch_faces> tables_;
};

}  // namespace roundwright
