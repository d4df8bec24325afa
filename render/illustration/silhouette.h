#pragma once

#include <QPainterPath>
#include <QRectF>

#include "core/mesh/stitch_surface.h"
#include "render/drawing/drawing_view.h"

namespace roundwright::render {

/// The outline of a mesh in parallel projection, full size.
struct Silhouette {
    QPainterPath path;  ///< mm, x right, y down, the mesh's origin at (0, 0); holes by the odd-even rule
    QRectF bounds_mm;   ///< exact, in the same frame
};

/// The outline of a mesh without relief (`smooth_mesh`), so that a stuffed piece held against it fits. Found
/// in cells, whose boundary is then laid on the outermost edges of the triangles there, and drawn smoothly
/// through those points: within a few hundredths of a millimetre of the mesh's own outline, but for spots
/// smaller than a thousandth of its size. Openings smaller than `least_opening_mm2` are filled.
[[nodiscard]] Silhouette silhouette(const Mesh& mesh, const DrawingView& view, double least_opening_mm2 = 4);

}  // namespace roundwright::render
