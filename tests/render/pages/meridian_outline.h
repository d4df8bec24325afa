#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include <QPainterPath>
#include <QTransform>

#include "core/shape/solve_shape.h"

namespace roundwright::render::testing {

inline double standing(const Shape& shape, bool starts_at_top, double z_mm) {
    return starts_at_top ? shape.height_mm - z_mm : z_mm;
}

/// The right half of the outline, from the bottom as it stands to the top. A drawn end goes on to its pole;
/// an open one ends at its edge.
inline std::vector<QPointF> half_outline(const Shape& shape, bool starts_at_top) {
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
inline double monotone_tangent(double before, double at, double after) {
    const double left = at - before;
    const double right = after - at;
    if (left * right <= 0) return 0;
    const double mean = (left + right) / 2;
    const double limit = 3 * std::min(std::abs(left), std::abs(right));
    return std::copysign(std::min(std::abs(mean), limit), mean);
}

inline QPointF tangent(const std::vector<QPointF>& points, std::size_t i) {
    if (i == 0 || i + 1 == points.size()) {
        const std::size_t from = i == 0 ? 0 : i - 1;
        const QPointF along = points[from + 1] - points[from];
        // At a pole a surface of revolution is level.
        return points[i].x() == 0 ? QPointF(along.x(), 0) : along;
    }
    return {monotone_tangent(points[i - 1].x(), points[i].x(), points[i + 1].x()),
            monotone_tangent(points[i - 1].y(), points[i].y(), points[i + 1].y())};
}

inline void curve_to(QPainterPath& path, const std::vector<QPointF>& points, std::size_t i) {
    const QPointF first = points[i] + tangent(points, i) / 3;
    const QPointF second = points[i + 1] - tangent(points, i + 1) / 3;
    path.cubicTo(first, second, points[i + 1]);
}

inline QPainterPath half_round(const Shape& shape, bool starts_at_top) {
    QPainterPath path;
    const std::vector<QPointF> points = half_outline(shape, starts_at_top);
    path.moveTo(0, points.front().y());
    path.lineTo(points.front());
    for (std::size_t i = 0; i + 1 < points.size(); ++i) curve_to(path, points, i);
    path.lineTo(0, points.back().y());
    return path;
}

/// The outline of a round piece as its meridian alone gives it: the closed form that the mesh's outline is
/// held against. mm, the axis at x = 0, the lowest point at y = 0 and y growing downwards.
inline QPainterPath meridian_outline(const Shape& shape, bool starts_at_top) {
    QPainterPath path = half_round(shape, starts_at_top);
    const QPainterPath mirrored = QTransform::fromScale(-1, 1).map(path).toReversed();
    path.connectPath(mirrored);
    path.closeSubpath();
    return path;
}

}  // namespace roundwright::render::testing
