#include "render/drawing/shape_batches.h"

#include <algorithm>
#include <cmath>

#include <QPainter>
#include <QPen>

#include "core/base/units.h"

namespace roundwright::render {
namespace {

/// The cubic Bezier pieces of a closed Catmull-Rom curve: control points a sixth of the neighbours' chord
/// away.
void add_smooth(QPainterPath& path, const QPolygonF& points) {
    const qsizetype many = points.size();
    if (many < 3) return;
    const auto at = [&](qsizetype k) { return points[(k + many) % many]; };
    path.moveTo(points.front());
    for (qsizetype k = 0; k < many; ++k)
        path.cubicTo(at(k) + (at(k + 1) - at(k - 1)) / 6, at(k + 1) - (at(k + 2) - at(k)) / 6, at(k + 1));
    path.closeSubpath();
}

/// A power of two of the device's unit, at most a two-hundredth of a millimetre.
double device_grid(const QPainter& painter) {
    const double unit_mm =
        mm_per_inch / (painter.device() ? std::max(1, painter.device()->logicalDpiX()) : 96);
    double grid = 1;
    while (grid * unit_mm > 0.005) grid /= 2;
    return grid;
}

QPainterPath rounded(QPainterPath path, double grid) {
    for (int k = 0; k < path.elementCount(); ++k) {
        const auto element = path.elementAt(k);
        path.setElementPositionAt(k, std::round(element.x / grid) * grid,
                                  std::round(element.y / grid) * grid);
    }
    return path;
}

}  // namespace

void ShapeBatches::fill(int order, const QColor& colour, const QPolygonF& shape) {
    auto& path = paths_[{order, 0, colour.rgb()}];
    path.addPolygon(shape);
    path.closeSubpath();
}

void ShapeBatches::fill_smooth(int order, const QColor& colour, const QPolygonF& points) {
    add_smooth(paths_[{order, 0, colour.rgb()}], points);
}

void ShapeBatches::stroke(int order, const QColor& colour, double width, const QPolygonF& points) {
    paths_[{order, width, colour.rgb()}].addPolygon(points);
}

void ShapeBatches::draw(QPainter& painter, const QTransform& to_painter) const {
    const QTransform to_device = to_painter * painter.combinedTransform();
    const double scale = std::sqrt(std::abs(to_device.determinant()));
    const double grid = device_grid(painter);
    painter.save();
    painter.resetTransform();
    for (const auto& [key, path] : paths_) {
        const QColor colour = QColor::fromRgb(key.colour);
        QPainterPath placed = rounded(to_device.map(path), grid);
        if (key.width > 0) {
            painter.strokePath(placed,
                               QPen(colour, key.width * scale, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
            continue;
        }
        placed.setFillRule(Qt::WindingFill);
        painter.fillPath(placed, colour);
    }
    painter.restore();
}

}  // namespace roundwright::render
