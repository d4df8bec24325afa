#include "render/pages/figure.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <QPainter>
#include <QTransform>

#include "render/pages/dimension_line.h"
#include "render/pages/page_style.h"
#include "render/pages/pattern_words.h"
#include "render/pages/swatch.h"

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

/// A band between two loops, as it is seen from the front.
QPainterPath band(const std::vector<QPointF>& points, std::size_t i) {
    QPainterPath right;
    right.moveTo(points[i]);
    curve_to(right, points, i);
    QPainterPath path = right;
    path.connectPath(QTransform::fromScale(-1, 1).map(right).toReversed());
    path.closeSubpath();
    return path;
}

QColor round_colour(const Toy& toy, const Piece& piece, std::size_t round) {
    const std::size_t yarn = piece.rounds[std::min(round, piece.rounds.size() - 1)].yarn;
    return yarn < toy.yarns.size() ? to_qcolor(toy.yarns[yarn].colour) : QColor(225, 221, 212);
}

/// The yarn of a band between two points of the half outline: an end's fan is of its round's.
std::size_t round_of_band(const Shape& shape, bool starts_at_top, std::size_t band, std::size_t bands) {
    const std::size_t from_start = starts_at_top ? bands - 1 - band : band;
    const bool fan_below = shape.first_pole_z_mm != shape.z_mm.front();
    return fan_below && from_start > 0 ? from_start - 1 : from_start;
}

void paint_bands(QPainter& painter, const Toy& toy, const Piece& piece, const Shape& shape) {
    const std::vector<QPointF> points = half_outline(shape, piece.starts_at_top);
    const std::size_t bands = points.size() - 1;
    for (std::size_t i = 0; i < bands; ++i) {
        const QColor colour = round_colour(toy, piece, round_of_band(shape, piece.starts_at_top, i, bands));
        painter.setBrush(colour);
        painter.setPen(QPen(colour.darker(125), 0.18));
        painter.drawPath(band(points, i));
    }
}

void paint_dimensions(QPainter& painter, const QRectF& figure, const Shape& shape, Units units) {
    const double under = figure.bottom() + mm(3);
    paint_level_dimension(painter, {figure.left(), under}, {figure.right(), under},
                          length_words(shape.width_mm, units));
    const double beside = figure.right() + mm(3);
    paint_upright_dimension(painter, {beside, figure.top()}, {beside, figure.bottom()},
                            length_words(shape.height_mm, units));
}

}  // namespace

double standing_height_mm(const Shape& shape, bool starts_at_top, std::size_t loop) {
    return standing(shape, starts_at_top, shape.z_mm[loop]);
}

QPainterPath silhouette_mm(const Shape& shape, bool starts_at_top) {
    QPainterPath path;
    if (!shape.usable()) return path;
    const std::vector<QPointF> points = half_outline(shape, starts_at_top);
    path.moveTo(0, points.front().y());
    path.lineTo(points.front());
    for (std::size_t i = 0; i + 1 < points.size(); ++i) curve_to(path, points, i);
    path.lineTo(0, points.back().y());
    const QPainterPath mirrored = QTransform::fromScale(-1, 1).map(path).toReversed();
    path.connectPath(mirrored);
    path.closeSubpath();
    return path;
}

double figure_scale(const Shape& shape, QSizeF box, bool dimensions) {
    const double room = dimensions ? dimension_room() : 0;
    const double across = (box.width() - 2 * room) / std::max(shape.width_mm, 1.0);
    const double up = (box.height() - room) / std::max(shape.height_mm, 1.0);
    return std::max(0.0, std::min(across, up));
}

void paint_figure(QPainter& painter, const QRectF& box, double scale, const Toy& toy, const Piece& piece,
                  const PieceStudy& study, Units units, bool dimensions) {
    const Shape& shape = study.shape;
    if (!shape.usable() || piece.rounds.empty()) return;
    const double bottom = box.bottom() - (dimensions ? dimension_room() : 0);
    painter.save();
    painter.translate(box.center().x(), bottom);
    painter.scale(scale, scale);
    paint_bands(painter, toy, piece, shape);
    painter.restore();
    if (!dimensions) return;
    const QSizeF size(shape.width_mm * scale, shape.height_mm * scale);
    const QRectF figure(QPointF(box.center().x() - size.width() / 2, bottom - size.height()), size);
    paint_dimensions(painter, figure, shape, units);
}

}  // namespace roundwright::render
