#pragma once

#include <QPainterPath>
#include <QPolygonF>

namespace roundwright::render {

/// A curve through points (Catmull-Rom, its cubic Bezier pieces), closed or open. At a corner sharper than
/// `corner_degrees` it stays sharp.
[[nodiscard]] QPainterPath smooth_path(const QPolygonF& points, bool closed, double corner_degrees = 40);

}  // namespace roundwright::render
