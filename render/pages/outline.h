#pragma once

#include <QPainterPath>
#include <QPolygonF>

#include "core/shape/solve_shape.h"

namespace roundwright::render {

/// Outline of a solved piece seen from the front, mm: the axis at x = 0, upright as the finished piece stands
/// with its lowest point at y = 0 and y growing downwards (so all of it is at y <= 0). The line runs smoothly
/// through the rounds and never beyond them: it is as wide and as high as the solved shape.
[[nodiscard]] QPainterPath silhouette_mm(const Shape& shape, bool starts_at_top);

/// The line of a loop as it is seen from the front, from side to side, in the same frame.
[[nodiscard]] QPolygonF loop_line_mm(const Shape& shape, bool starts_at_top, std::size_t loop);

/// Height of a loop above the piece's lowest point as it stands, mm.
[[nodiscard]] double standing_height_mm(const Shape& shape, bool starts_at_top, std::size_t loop);

}  // namespace roundwright::render
