#include "render/illustration/silhouette.h"

#include <algorithm>
#include <cmath>

#include "render/drawing/item_buffer.h"
#include "render/drawing/region_outline.h"
#include "render/drawing/smooth_path.h"
#include "render/illustration/smooth_patches.h"

namespace roundwright::render {
namespace {

constexpr double cell_mm = 0.08, tolerance_cells = 0.8;

double stitch_area(const StitchSurface& surface) {
    double sum = 0;
    for (const auto& patch : surface.stitches) sum += (patch.corners[2] - patch.corners[3]).squaredNorm();
    return surface.stitches.empty() ? 0 : sum / static_cast<double>(surface.stitches.size());
}

CellRegion covered(const ItemBuffer& seen) {
    CellRegion region(seen.width(), seen.height());
    for (int row = 0; row < seen.height(); ++row)
        for (int column = 0; column < seen.width(); ++column)
            if (seen.at(column, row) != ItemBuffer::nothing) region.add(column, row);
    return region;
}

}  // namespace

Silhouette silhouette(const StitchSurface& surface, const DrawingView& view) {
    Silhouette found;
    if (surface.stitches.empty()) return found;
    const Projection projection(view);
    const Mesh mesh = smooth_patches(surface, 3);
    const QRectF bounds = projected_bounds(mesh, projection);
    ItemBuffer seen(bounds, std::max(cell_mm, std::max(bounds.width(), bounds.height()) / 2'500), 8'000'000);
    seen.draw(mesh, projection, 0);
    // Cracks where the curves of neighbouring rounds differ, and the holes of drawn ends, are no outline.
    const double least_cells = stitch_area(surface) / 4 / (seen.cell_mm() * seen.cell_mm());
    for (const auto& boundary : region_boundaries(covered(seen), tolerance_cells, least_cells)) {
        QPolygonF placed;
        for (const auto& point : boundary) {
            const QPointF flat = seen.corner(point.x(), point.y());
            placed.append({flat.x() - bounds.left(), bounds.bottom() - flat.y()});
        }
        found.path.addPath(smooth_path(placed, true));
    }
    // The cells reach half a cell past the true outline at most; the bounds are exact.
    const QRectF drawn = found.path.boundingRect();
    if (drawn.width() > 0 && drawn.height() > 0) {
        QTransform fit;
        fit.scale(bounds.width() / drawn.width(), bounds.height() / drawn.height());
        fit.translate(-drawn.left(), -drawn.top());
        found.path = fit.map(found.path);
    }
    found.size_mm = bounds.size();
    return found;
}

}  // namespace roundwright::render
