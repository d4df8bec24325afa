#pragma once

#include <QColor>
#include <QRectF>
#include <QString>

#include "core/mesh/stitch_surface.h"
#include "render/illustration/piece_drawing.h"

class QPainter;

namespace roundwright::render {

/// What stands at the dimension lines, as the app words it; empty: no line.
struct MeasureLabels {
    QString width;
    QString height;
};

struct MeasureOptions {
    QColor ink{70, 78, 86};
    double text_height = 10;  ///< in the painter's units; the painter's font is set to it
};

/// A drawing of a piece with dimension lines below it and to its right, arrowheads and witness lines as in
/// technical drawing (ISO 129-1). The target holds all of it; the lines measure the whole
/// drawing, parts included.
DrawnPiece draw_measured_piece(QPainter& painter, const StitchSurface& surface, DrawOptions options,
                               const MeasureLabels& labels, const MeasureOptions& style = {});

/// Dimension lines around a box already drawn, for other pictures.
void draw_dimensions(QPainter& painter, const QRectF& measured, const MeasureLabels& labels,
                     const MeasureOptions& style);

/// Room that the dimension lines take below and to the right.
[[nodiscard]] double dimension_room(const MeasureOptions& style);

}  // namespace roundwright::render
