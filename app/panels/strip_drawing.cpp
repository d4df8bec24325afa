#include "app/panels/strip_drawing.h"

#include <algorithm>

#include <QFontMetricsF>
#include <QPainter>
#include <QPalette>
#include <QPolygonF>

namespace roundwright::app {

namespace {

/// What an area's height stands for.
struct Scale {
    double low;
    double high;
    QRectF area;

    [[nodiscard]] double y_of(double value) const {
        return area.bottom() - (value - low) / (high - low) * area.height();
    }
};

Scale scale_of(const RoundStrip& strip, const QRectF& area) {
    Scale scale{strip.low, strip.high, area};
    for (const double value : strip.values) {
        scale.low = std::min(scale.low, value);
        scale.high = std::max(scale.high, value);
    }
    if (scale.high <= scale.low) scale.high = scale.low + 1;
    return scale;
}

void draw_words(QPainter& painter, const RoundStrip& strip, const Scale& scale) {
    const QFontMetricsF metrics(painter.font());
    const QRectF& area = scale.area;
    painter.drawText(QPointF(area.left(), area.top() - metrics.descent() - 1), strip.title);
    for (const double end : {scale.high, scale.low}) {
        const QRectF box(0, scale.y_of(end) - metrics.height() / 2, area.left() - 6, metrics.height());
        painter.drawText(box, Qt::AlignRight | Qt::AlignVCenter, QString::number(end, 'g', 3));
    }
}

void draw_limits(QPainter& painter, const RoundStrip& strip, const Scale& scale, const QColor& colour) {
    const QRectF& area = scale.area;
    painter.setPen(QPen(colour, 1, Qt::DashLine));
    for (const double limit : strip.limits) {
        if (limit <= scale.low || limit >= scale.high) continue;
        painter.drawLine(QPointF(area.left(), scale.y_of(limit)), QPointF(area.right(), scale.y_of(limit)));
    }
    painter.setPen(QPen(colour, 1));
    painter.drawLine(area.bottomLeft(), area.bottomRight());
}

void draw_line(QPainter& painter, const QPolygonF& line, const QColor& colour) {
    constexpr qsizetype most_dots = 60;
    constexpr double dot = 2.2;
    painter.setPen(QPen(colour, 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPolyline(line);
    if (line.size() > most_dots) return;
    painter.setBrush(colour);
    painter.setPen(Qt::NoPen);
    for (const QPointF& point : line) painter.drawEllipse(point, dot, dot);
}

}  // namespace

void draw_strip(QPainter& painter, const RoundStrip& strip, const QRectF& area,
                const std::function<double(int)>& x_of, const QPalette& palette) {
    const Scale scale = scale_of(strip, area);
    painter.setPen(palette.color(QPalette::Text));
    draw_words(painter, strip, scale);
    draw_limits(painter, strip, scale, palette.color(QPalette::Mid));
    QPolygonF line;
    for (std::size_t k = 0; k < strip.values.size(); ++k)
        line << QPointF(x_of(static_cast<int>(k)), scale.y_of(strip.values[k]));
    draw_line(painter, line, palette.color(QPalette::Highlight));
}

}  // namespace roundwright::app
