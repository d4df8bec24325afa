#include "render/illustration/measured_drawing.h"

#include <algorithm>
#include <cmath>

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>

namespace roundwright::render {
namespace {

constexpr double gap_share = 0.5, line_at_share = 1.3, room_share = 2.4, arrow_share = 0.55;

void draw_arrowhead(QPainter& painter, const QPointF& tip, const QPointF& towards, double size) {
    const QPointF aside(-towards.y(), towards.x());
    QPainterPath head(tip);
    head.lineTo(tip + size * towards + 0.3 * size * aside);
    head.lineTo(tip + size * towards - 0.3 * size * aside);
    head.closeSubpath();
    painter.fillPath(head, painter.pen().color());
}

/// A line with arrowheads from one place to another, broken for its label in the middle.
void draw_arrow_line(QPainter& painter, const QPointF& from, const QPointF& to, double label_room,
                     double size) {
    const QPointF way = to - from;
    const double length = std::hypot(way.x(), way.y());
    if (length <= 0) return;
    const QPointF towards = way / length;
    const double half = std::max(0.0, (length - label_room) / 2);
    painter.drawLine(from, from + towards * half);
    painter.drawLine(to - towards * half, to);
    draw_arrowhead(painter, from, towards, std::min(size, length / 3));
    draw_arrowhead(painter, to, -towards, std::min(size, length / 3));
}

void draw_width(QPainter& painter, const QRectF& box, const QString& label, double text) {
    const double y = box.bottom() + line_at_share * text;
    for (const double x : {box.left(), box.right()})
        painter.drawLine(QPointF(x, box.bottom() + gap_share * text), QPointF(x, y + gap_share * text));
    const QFontMetricsF metrics(painter.font(), painter.device());
    const double words = metrics.horizontalAdvance(label) + text;
    draw_arrow_line(painter, {box.left(), y}, {box.right(), y}, words, arrow_share * text);
    painter.drawText(QRectF(box.center().x() - words / 2, y - text, words, 2 * text), Qt::AlignCenter, label);
}

void draw_height(QPainter& painter, const QRectF& box, const QString& label, double text) {
    const double x = box.right() + line_at_share * text;
    for (const double y : {box.top(), box.bottom()})
        painter.drawLine(QPointF(box.right() + gap_share * text, y), QPointF(x + gap_share * text, y));
    const QFontMetricsF metrics(painter.font(), painter.device());
    const double words = metrics.horizontalAdvance(label) + text;
    draw_arrow_line(painter, {x, box.top()}, {x, box.bottom()}, words, arrow_share * text);
    painter.save();
    painter.translate(x, box.center().y());
    painter.rotate(-90);
    painter.drawText(QRectF(-words / 2, -text, words, 2 * text), Qt::AlignCenter, label);
    painter.restore();
}

}  // namespace

double dimension_room(const MeasureOptions& style) { return room_share * style.text_height; }

void draw_dimensions(QPainter& painter, const QRectF& measured, const MeasureLabels& labels,
                     const MeasureOptions& style) {
    const double text = style.text_height;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    QFont font = painter.font();
    const double now = QFontMetricsF(font, painter.device()).height();
    if (now > 0 && font.pointSizeF() > 0) font.setPointSizeF(font.pointSizeF() * text * 1.2 / now);
    painter.setFont(font);
    painter.setPen(QPen(style.ink, text * 0.06));
    if (!labels.width.isEmpty()) draw_width(painter, measured, labels.width, text);
    if (!labels.height.isEmpty()) draw_height(painter, measured, labels.height, text);
    painter.restore();
}

DrawnPiece draw_measured_piece(QPainter& painter, const StitchSurface& surface, DrawOptions options,
                               const MeasureLabels& labels, const MeasureOptions& style) {
    const double below = labels.width.isEmpty() ? 0 : dimension_room(style);
    const double beside = labels.height.isEmpty() ? 0 : dimension_room(style);
    options.target.adjust(0, 0, -beside, -below);
    const DrawnPiece drawn = draw_piece(painter, surface, options);
    if (drawn.units_per_mm > 0) draw_dimensions(painter, drawn.bounds, labels, style);
    return drawn;
}

}  // namespace roundwright::render
