#pragma once

#include <cstdint>
#include <vector>

#include <QRectF>

#include "core/mesh/stitch_surface.h"
#include "render/drawing/drawing_view.h"

namespace roundwright::render {

/// Which triangle of which mesh is seen at each cell of a fine grid over the drawing's plane: what is hidden
/// is found by depth, cell by cell.
class ItemBuffer {
  public:
    static constexpr std::uint32_t nothing = 0xFFFFFFFFU;

    /// Covers `area` (x right, y up, mm) with square cells of at most `cell_mm`, and coarser if there would
    /// be more than `most_cells`.
    ItemBuffer(const QRectF& area, double cell_mm, std::size_t most_cells = 4'000'000);

    /// Draws a mesh's triangles under numbers from `first_number` on. A cell takes the nearest triangle over
    /// its middle.
    void draw(const Mesh& mesh, const Projection& projection, std::uint32_t first_number);

    [[nodiscard]] int width() const { return width_; }
    [[nodiscard]] int height() const { return height_; }
    [[nodiscard]] double cell_mm() const { return cell_mm_; }
    /// Column 0 is leftmost, row 0 lowest.
    [[nodiscard]] std::uint32_t at(int column, int row) const { return items_[index(column, row)]; }
    /// Where the lower left corner of a cell is, mm.
    [[nodiscard]] QPointF corner(double column, double row) const {
        return {area_.left() + column * cell_mm_, area_.top() + row * cell_mm_};
    }
    /// The cell at a place of the plane; `nothing` outside.
    [[nodiscard]] std::uint32_t item_at(const QPointF& place) const;

  private:
    [[nodiscard]] std::size_t index(int column, int row) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(width_) +
               static_cast<std::size_t>(column);
    }
    void fill(const Vec3& a, const Vec3& b, const Vec3& c, std::uint32_t number);

    QRectF area_;
    double cell_mm_;
    int width_;
    int height_;
    std::vector<float> depths_;
    std::vector<std::uint32_t> items_;
};

/// Bounds of meshes in the drawing's plane, mm; empty for none.
[[nodiscard]] QRectF projected_bounds(const Mesh& mesh, const Projection& projection);

}  // namespace roundwright::render
