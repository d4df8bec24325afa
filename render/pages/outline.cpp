#include "render/pages/outline.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <QTransform>

namespace roundwright::render {
namespace {

double standing(const Shape& shape, bool starts_at_top, double z_mm) {
    return starts_at_top ? shape.height_mm - z_mm : z_mm;
}

/// The right half of the outline, from the bottom as it stands to the top. A drawn end goes on to its pole;
/// an open one ends at its edge.
std::vector<QPointF> half_outline(const Shape& shape, bool starts_at_top) {
    std::vector<QPointF> points;
    const auto add = [&](double radius, double z) {
        points.emplace_back(radius, -standing(shape, starts_at_top, z));
    };
    if (shape.first_pole_z_mm != shape.z_mm.front()) add(0, shape.first_pole_z_mm);
    for (std::size_t i = 0; i < shape.radius_mm.size(); ++i) add(shape.radius_mm[i], shape.z_mm[i]);
    if (shape.last_pole_z_mm != shape.z_mm.back()) add(0, shape.last_pole_z_mm);
    if (starts_at_top) std::reverse(points.begin(), points.end());
    return points;
}

/// Tangent at the middle of three values that lets the curve overshoot neither neighbour. Source: F. N.
/// Fritsch and R. E. Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980) 238-246.
double monotone_tangent(double before, double at, double after) {
    const double left = at - before;
    const double right = after - at;
    if (left * right <= 0) return 0;
    const double mean = (left + right) / 2;
    const double limit = 3 * std::min(std::abs(left), std::abs(right));
    return std::copysign(std::min(std::abs(mean), limit), mean);
}

QPointF tangent(const std::vector<QPointF>& points, std::size_t i) {
    if (i == 0 || i + 1 == points.size()) {
        const std::size_t from = i == 0 ? 0 : i - 1;
        const QPointF along = points[from + 1] - points[from];
        // At a pole a surface of revolution is level.
        return points[i].x() == 0 ? QPointF(along.x(), 0) : along;
    }
    return {monotone_tangent(points[i - 1].x(), points[i].x(), points[i + 1].x()),
            monotone_tangent(points[i - 1].y(), points[i].y(), points[i + 1].y())};
}

void curve_to(QPainterPath& path, const std::vector<QPointF>& points, std::size_t i) {
    const QPointF first = points[i] + tangent(points, i) / 3;
    const QPointF second = points[i + 1] - tangent(points, i + 1) / 3;
    path.cubicTo(first, second, points[i + 1]);
}

/// Along half a flattened loop's line, from its middle to the right fold.
std::vector<QPointF> half_line(const Shape& shape, bool starts_at_top, std::size_t loop) {
    constexpr int steps = 24;
    const LoopSection& section = shape.sections[loop];
    std::vector<QPointF> line;
    for (int k = 0; k <= steps; ++k) {
        const Vec2 at = section.on_line(static_cast<double>(k) / steps);
        line.emplace_back(at.x(), -standing(shape, starts_at_top, shape.z_mm[loop] + at.y()));
    }
    return line;
}

/// The right fold, from loop to loop, and on to the point of a drawn end.
std::vector<QPointF> fold(const Shape& shape, bool starts_at_top) {
    std::vector<QPointF> points;
    for (std::size_t i = 0; i < shape.sections.size(); ++i)
        points.push_back(half_line(shape, starts_at_top, i).back());
    if (shape.last_pole_z_mm != shape.z_mm.back())
        points.emplace_back(0, -standing(shape, starts_at_top, shape.last_pole_z_mm));
    return points;
}

/// The right half of a flattened piece: its first loop, its fold, its last loop.
QPainterPath half_flattened(const Shape& shape, bool starts_at_top) {
    QPainterPath path;
    const std::vector<QPointF> first = half_line(shape, starts_at_top, 0);
    path.moveTo(first.front());
    for (const QPointF& point : first) path.lineTo(point);
    const std::vector<QPointF> points = fold(shape, starts_at_top);
    // A quadratic B-spline: a fold has corners, which a curve through every round would swing around.
    for (std::size_t i = 1; i + 1 < points.size(); ++i) {
        if (i == 1) path.lineTo((points[0] + points[1]) / 2);
        path.quadTo(points[i], (points[i] + points[i + 1]) / 2);
    }
    path.lineTo(points.back());
    const std::vector<QPointF> last = half_line(shape, starts_at_top, shape.sections.size() - 1);
    if (shape.last_pole_z_mm == shape.z_mm.back())
        for (auto point = last.rbegin(); point != last.rend(); ++point) path.lineTo(*point);
    return path;
}

QPainterPath half_round(const Shape& shape, bool starts_at_top) {
    QPainterPath path;
    const std::vector<QPointF> points = half_outline(shape, starts_at_top);
    path.moveTo(0, points.front().y());
    path.lineTo(points.front());
    for (std::size_t i = 0; i + 1 < points.size(); ++i) curve_to(path, points, i);
    path.lineTo(0, points.back().y());
    return path;
}

}  // namespace

QPolygonF loop_line_mm(const Shape& shape, bool starts_at_top, std::size_t loop) {
    QPolygonF line;
    if (!shape.flattened()) {
        const double y = -standing(shape, starts_at_top, shape.z_mm[loop]);
        line << QPointF(-shape.radius_mm[loop], y) << QPointF(shape.radius_mm[loop], y);
        return line;
    }
    const std::vector<QPointF> right = half_line(shape, starts_at_top, loop);
    for (auto point = right.rbegin(); point != right.rend(); ++point)
        line << QPointF(-point->x(), point->y());
    for (std::size_t i = 1; i < right.size(); ++i) line << right[i];
    return line;
}

double standing_height_mm(const Shape& shape, bool starts_at_top, std::size_t loop) {
    return standing(shape, starts_at_top, shape.z_mm[loop]);
}

QPainterPath silhouette_mm(const Shape& shape, bool starts_at_top) {
    QPainterPath path;
    if (!shape.usable()) return path;
    path = shape.flattened() ? half_flattened(shape, starts_at_top) : half_round(shape, starts_at_top);
    const QPainterPath mirrored = QTransform::fromScale(-1, 1).map(path).toReversed();
    path.connectPath(mirrored);
    path.closeSubpath();
    return path;
}

}  // namespace roundwright::render
