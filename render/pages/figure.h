#pragma once

#include <QPainterPath>
#include <QRectF>

#include "core/checks/piece_study.h"
#include "core/pattern/toy.h"
#include "render/pages/paper.h"

class QPainter;

namespace roundwright::render {

/// Outline of a solved piece seen from the front, mm: the axis at x = 0, upright as the finished piece stands
/// with its lowest point at y = 0 and y growing downwards (so all of it is at y <= 0). The line runs smoothly
/// through the rounds and never beyond them: it is as wide and as high as the solved shape.
[[nodiscard]] QPainterPath silhouette_mm(const Shape& shape, bool starts_at_top);

/// Height of a loop above the piece's lowest point as it stands, mm.
[[nodiscard]] double standing_height_mm(const Shape& shape, bool starts_at_top, std::size_t loop);

/// Largest scale (layout units a mm) at which a piece and its dimension lines fit a box.
[[nodiscard]] double figure_scale(const Shape& shape, QSizeF box, bool dimensions);

/// A piece drawn from the front at a scale, standing on the middle of the lower edge of `box`, in its yarns'
/// colours, with its rounds; with dimension lines if wanted.
void paint_figure(QPainter& painter, const QRectF& box, double scale, const Toy& toy, const Piece& piece,
                  const PieceStudy& study, Units units, bool dimensions);

}  // namespace roundwright::render
