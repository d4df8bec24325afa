#pragma once

#include <cstdint>
#include <vector>

#include <QPainterPath>
#include <QPolygonF>

namespace roundwright::render {

/// A set of cells of a grid; row 0 is lowest.
struct CellRegion {
    CellRegion(int columns, int rows)
        : width(columns),
          height(rows),
          inside(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows), 0) {}

    int width;
    int height;
    std::vector<std::uint8_t> inside;  ///< [row * width + column], 1 inside

    void add(int column, int row) {
        inside[static_cast<std::size_t>(row) * static_cast<std::size_t>(width) +
               static_cast<std::size_t>(column)] = 1;
    }
    [[nodiscard]] bool has(int column, int row) const {
        return column >= 0 && row >= 0 && column < width && row < height &&
               inside[static_cast<std::size_t>(row) * static_cast<std::size_t>(width) +
                      static_cast<std::size_t>(column)] != 0;
    }
};

/// The closed boundaries of a region through the middles of its cells' outer sides, in cells (the lower left
/// corner of cell (0, 0) is the origin), the region to the left. Points nearer than `tolerance_cells` to the
/// line of their neighbours are left out (Douglas and Peucker, Cartographica 10 (1973) 112-122). Boundaries
/// around less than `least_cells` cells are left out.
[[nodiscard]] std::vector<QPolygonF> region_boundaries(const CellRegion& region, double tolerance_cells,
                                                       double least_cells);

/// Area by the shoelace formula; positive anticlockwise.
[[nodiscard]] double signed_area(const QPolygonF& polygon);

}  // namespace roundwright::render
