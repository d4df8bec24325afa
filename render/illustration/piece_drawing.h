#pragma once

#include <vector>

#include <QPointF>
#include <QRectF>

#include "core/mesh/stitch_surface.h"
#include "render/drawing/drawing_view.h"
#include "render/illustration/yarn_detail.h"

class QPainter;

namespace roundwright::render {

/// A thing on the piece: an eye, a nose, a patch of felt. Same axes and unit as the surface.
struct DrawnPart {
    Mesh mesh;
    bool glossy = true;  ///< gets a highlight
};

struct DrawOptions {
    DrawingView view;
    QRectF target;                ///< where to draw, in the painter's units; the picture is centred in it
    double units_per_mm = 0;      ///< scale; 0: as large as the target allows
    std::vector<int> lit_rounds;  ///< from 0; the others are paled. Empty: all as they are
    std::vector<DrawnPart> parts;
    YarnDetail most_detail = YarnDetail::twist;  ///< less where the stitches come out small, or a file has to
};

/// Where a drawing came to lie, so that marks and measures can be put on it.
struct DrawnPiece {
    Projection projection{DrawingView{}};
    QPointF origin;  ///< of the view's plane, in the painter's units
    double units_per_mm = 1;
    QRectF bounds;  ///< of the piece and its parts, in the painter's units

    [[nodiscard]] QPointF at(const Vec3& point) const {
        const QPointF flat = projection.flat(point);
        return origin + QPointF(flat.x(), -flat.y()) * units_per_mm;
    }
};

/// Where `draw_piece` would draw.
[[nodiscard]] DrawnPiece place_piece(const StitchSurface& surface, const DrawOptions& options);

/// Draws a piece as an illustration in parallel projection: every stitch that is seen, as its cords of yarn
/// in soft light from the upper left, hidden ones left out. Flat opaque fills only, a few dozen paths, so
/// that it suits PDF/A-1 and SVG as well as pixels. Nothing to show: nothing drawn.
DrawnPiece draw_piece(QPainter& painter, const StitchSurface& surface, const DrawOptions& options);

}  // namespace roundwright::render
