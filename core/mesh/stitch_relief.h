#pragma once

#include <cstddef>
#include <vector>

namespace roundwright {

/// How many columns and rows of little faces a stitch is drawn with.
struct ReliefGrid {
    int columns = 1;
    int rows = 1;

    [[nodiscard]] std::size_t triangles() const { return 2u * static_cast<std::size_t>(columns * rows); }
};

/// The finest grid with which `stitches` stitches, on an inside of one more row each if there is one, stay
/// within `most_triangles`; one face a stitch at least.
[[nodiscard]] ReliefGrid finest_relief(std::size_t stitches, std::size_t most_triangles, bool inside);

/// Height of a single crochet's face over the mean surface, in stitch widths: two plump legs that lean apart
/// from where the stitch is worked in (u = 1/2, v = 0) to its two shoulders (v = 1), with a groove between
/// rounds and a hollow between the legs. u runs across and v up the stitch, both 0..1.
[[nodiscard]] double stitch_relief(double u, double v);

/// `stitch_relief` on a grid: row v = j / rows, j = 1..rows, column u = q / columns, q = 0..columns - 1, with
/// its mean taken off, so that the mean surface stays where it is. Row `rows` is the groove on the edge
/// above, which the next round's row 0 shares.
struct ReliefTable {
    ReliefGrid grid;
    std::vector<float> height;  ///< [(j - 1) * columns + q], in stitch widths
    std::vector<float> light;   ///< share of light that gets there, 0..1: less in the grooves

    ReliefTable(ReliefGrid grid, bool relief);
    [[nodiscard]] std::size_t at(int row, int column) const {
        return static_cast<std::size_t>((row - 1) * grid.columns + column);
    }
};

}  // namespace roundwright
