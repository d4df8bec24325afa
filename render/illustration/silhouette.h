#pragma once

#include <QPainterPath>
#include <QSizeF>

#include "core/mesh/stitch_surface.h"
#include "render/drawing/drawing_view.h"

namespace roundwright::render {

/// The outline of a piece in parallel projection, full size.
struct Silhouette {
    QPainterPath
        path;  ///< mm, y down, from (0, 0) at the upper left of its bounds; holes by the odd-even rule
    QSizeF size_mm;
};

/// The outline of the mean surface (without the relief, so that a stuffed piece held against it fits),
/// through the stitches' corners with their loops round between them. Exact to 0.1 mm for pieces up to 200 mm
/// and to a two-thousandth of larger ones. Openings smaller than a stitch, as where a piece is drawn closed,
/// are filled.
[[nodiscard]] Silhouette silhouette(const StitchSurface& surface, const DrawingView& view);

}  // namespace roundwright::render
