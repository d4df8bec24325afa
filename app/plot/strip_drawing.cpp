#include "app/plot/strip_drawing.h"

#include <algorithm>

#include <QFontMetricsF>
#include <QLocale>
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

QString number_words(double value, int decimals) {
    return QLocale().toString(value, 'f', decimals).replace(QLatin1Char('-'), QChar(0x2212));
}

void draw_words(QPainter& painter, const RoundStrip& strip, const Scale& scale) {
    const QFontMetricsF metrics(painter.font());
    const QRectF& area = scale.area;
    const QString title =
        strip.unit.isEmpty() ? strip.title : QStringLiteral("%1, %2").arg(strip.title, strip.unit);
    painter.drawText(QPointF(area.left(), area.top() - metrics.descent() - 1), title);
    for (const double end : {scale.high, scale.low}) {
        const QRectF box(0, scale.y_of(end) - metrics.height() / 2, area.left() - 6, metrics.height());
        painter.drawText(box, Qt::AlignRight | Qt::AlignVCenter,
                         number_words(end, std::min(strip.decimals, 1)));
    }
}

void draw_limits(QPainter& painter, const RoundStrip& strip, const Scale& scale, const QPalette& palette) {
    const QRectF& area = scale.area;
    for (const StripLimit& limit : strip.limits) {
        const double y = scale.y_of(limit.value);
        if (limit.value <= scale.low || limit.value >= scale.high) continue;
        painter.setPen(QPen(palette.color(QPalette::Mid), 1, Qt::DashLine));
        painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y));
        const double height = QFontMetricsF(painter.font()).height();
        const double top = y - height < area.top() ? y : y - height;
        painter.setPen(palette.color(QPalette::PlaceholderText));
        painter.drawText(QRectF(area.left(), top, area.width(), height), Qt::AlignRight | Qt::AlignVCenter,
                         limit.says);
    }
    painter.setPen(QPen(palette.color(QPalette::Mid), 1));
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
    draw_limits(painter, strip, scale, palette);
    QPolygonF line;
    for (std::size_t k = 0; k < strip.values.size(); ++k)
        line << QPointF(x_of(static_cast<int>(k)), scale.y_of(strip.values[k]));
    draw_line(painter, line, palette.color(QPalette::Highlight));
}

}  // namespace roundwright::app
