#include "render/pages/swatch.h"

#include <algorithm>
#include <array>

#include <QPainter>
#include <QPainterPath>

#include "render/drawing/contrast.h"
#include "render/pages/layout/page_style.h"

namespace roundwright::render {
namespace {

constexpr double line_distance = pt(3.2);

/// Parallel lines over a field, rising by `slope` to the right (0: level).
void add_lines(QPainterPath& path, const QRectF& field, double slope) {
    const double rise = slope * field.width();
    const double first = field.top() - std::max(0.0, -rise) + line_distance / 2;
    for (double y = first; y < field.bottom() + std::max(0.0, rise); y += line_distance) {
        path.moveTo(field.left(), y);
        path.lineTo(field.right(), y - rise);
    }
}

void add_uprights(QPainterPath& path, const QRectF& field) {
    for (double x = field.left() + line_distance / 2; x < field.right(); x += line_distance) {
        path.moveTo(x, field.top());
        path.lineTo(x, field.bottom());
    }
}

void add_dots(QPainterPath& path, const QRectF& field) {
    const double dot = pt(0.9);
    for (double y = field.top() + line_distance / 2; y < field.bottom(); y += line_distance) {
        for (double x = field.left() + line_distance / 2; x < field.right(); x += line_distance) {
            path.moveTo(x - dot / 2, y);
            path.lineTo(x + dot / 2, y);
        }
    }
}

QPainterPath hatch(const QRectF& field, std::size_t place) {
    QPainterPath path;
    switch (place % hatch_count) {
        case 0:
            break;
        case 1:
            add_lines(path, field, 1);
            break;
        case 2:
            add_lines(path, field, 0);
            break;
        case 3:
            add_dots(path, field);
            break;
        case 4:
            add_uprights(path, field);
            break;
        case 5:
            add_lines(path, field, 1);
            add_lines(path, field, -1);
            break;
        default:
            break;
    }
    return path;
}

}  // namespace

QColor to_qcolor(Colour colour) { return {colour.red, colour.green, colour.blue}; }

QColor line_on(const QColor& field) {
    const QColor dark = page_colour::ink;
    const QColor light(Qt::white);
    return contrast_ratio(field, dark) >= contrast_ratio(field, light) ? dark : light;
}

void paint_swatch(QPainter& painter, const QRectF& field, Colour yarn, std::size_t place) {
    const QColor colour = to_qcolor(yarn);
    painter.save();
    painter.fillRect(field, colour);
    painter.setClipRect(field, Qt::IntersectClip);
    painter.setPen(QPen(line_on(colour), pt(0.6), Qt::SolidLine, Qt::FlatCap));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(hatch(field, place));
    painter.restore();
    painter.setPen(QPen(page_colour::drawn, pt(0.6)));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(field);
}

}  // namespace roundwright::render
