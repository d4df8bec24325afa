#include "render/illustration/silhouette.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <QTransform>

#include "render/drawing/item_buffer.h"
#include "render/drawing/region_outline.h"
#include "render/drawing/smooth_path.h"
#include "render/illustration/outline_snap.h"

namespace roundwright::render {
namespace {

constexpr double finest_cell_mm = 0.1, cells_across = 1'000, tolerance_cells = 1;
constexpr double cells_a_point = 10;

CellRegion covered(const ItemBuffer& seen) {
    CellRegion region(seen.width(), seen.height());
    for (int row = 0; row < seen.height(); ++row)
        for (int column = 0; column < seen.width(); ++column)
            if (seen.at(column, row) != ItemBuffer::nothing) region.add(column, row);
    return region;
}

/// The same line with points no further apart than so much.
QPolygonF divided(const QPolygonF& line, double most_mm) {
    QPolygonF points;
    for (qsizetype k = 0; k < line.size(); ++k) {
        const QPointF from = line[k], way = line[(k + 1) % line.size()] - from;
        const int parts = std::max(1, static_cast<int>(std::ceil(std::hypot(way.x(), way.y()) / most_mm)));
        for (int part = 0; part < parts; ++part) points << from + way * part / parts;
    }
    return points;
}

std::vector<QPolygonF> rough_boundaries(const Mesh& mesh, const Projection& projection, const QRectF& bounds,
                                        double cell_mm, double least_opening_mm2) {
    ItemBuffer seen(bounds, cell_mm);
    seen.draw(mesh, projection, 0);
    const double least_cells = least_opening_mm2 / (seen.cell_mm() * seen.cell_mm());
    auto boundaries = region_boundaries(covered(seen), tolerance_cells, least_cells);
    for (QPolygonF& boundary : boundaries) {
        for (QPointF& point : boundary) point = seen.corner(point.x(), point.y());
        boundary = divided(boundary, cells_a_point * cell_mm);
    }
    return boundaries;
}

}  // namespace

Silhouette silhouette(const Mesh& mesh, const DrawingView& view, double least_opening_mm2) {
    Silhouette found;
    const Projection projection(view);
    const QRectF bounds = projected_bounds(mesh, projection);
    if (mesh.triangle_count() == 0 || !(bounds.width() > 0) || !(bounds.height() > 0)) return found;
    const double cell_mm = std::max(finest_cell_mm, std::max(bounds.width(), bounds.height()) / cells_across);
    auto boundaries = rough_boundaries(mesh, projection, bounds, cell_mm, least_opening_mm2);
    snap_to_outline(boundaries, mesh, projection, 3 * cell_mm);
    const QTransform down = QTransform::fromScale(1, -1);
    for (const QPolygonF& boundary : boundaries) found.path.addPath(smooth_path(down.map(boundary), true));
    found.bounds_mm = down.mapRect(bounds);
    return found;
}

}  // namespace roundwright::render
