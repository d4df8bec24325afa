#include "render/pages/layout/dimension_line.h"

#include <QFontMetricsF>
#include <QPainter>

#include "render/pages/layout/page_style.h"

namespace roundwright::render {
namespace {

constexpr double text_away = mm(3.5);

void paint_line(QPainter& painter, QPointF from, QPointF to, QPointF tick) {
    painter.setPen(QPen(page_colour::drawn, pt(0.6)));
    painter.drawLine(from, to);
    painter.drawLine(from - tick, from + tick);
    painter.drawLine(to - tick, to + tick);
}

void paint_centred(QPainter& painter, QPointF centre, const QString& text) {
    painter.setFont(body_font(8));
    painter.setPen(page_colour::soft_ink);
    const QFontMetricsF metrics(painter.font());
    painter.drawText(centre + QPointF(-metrics.horizontalAdvance(text) / 2, metrics.capHeight() / 2), text);
}

}  // namespace

double dimension_room() { return mm(9); }

void paint_level_dimension(QPainter& painter, QPointF left, QPointF right, const QString& measure,
                           bool above) {
    paint_line(painter, left, right, {0, mm(1)});
    paint_centred(painter, (left + right) / 2 + QPointF(0, above ? -text_away + mm(0.6) : text_away),
                  measure);
}

void paint_upright_dimension(QPainter& painter, QPointF top, QPointF bottom, const QString& measure) {
    paint_line(painter, top, bottom, {mm(1), 0});
    painter.save();
    painter.translate((top + bottom) / 2 + QPointF(text_away, 0));
    painter.rotate(-90);
    paint_centred(painter, {0, 0}, measure);
    painter.restore();
}

}  // namespace roundwright::render
