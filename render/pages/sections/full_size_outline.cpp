#include "render/pages/sections/full_size_outline.h"

#include <algorithm>

#include <QFontMetricsF>
#include <QPainter>
#include <QTransform>

#include "render/pages/layout/page_style.h"

namespace roundwright::render {
namespace {

constexpr std::size_t marked_rounds = 5;
constexpr double least_marked_radius_mm = 8;

QPen outline_pen() { return {page_colour::ink, pt(1), Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin}; }
QPen axis_pen() { return {page_colour::drawn, pt(0.4), Qt::DashDotLine}; }
QPen mark_pen() { return {page_colour::rule, pt(0.5)}; }

/// Right of the axis, on the line or, where the outline is too near above, under it.
void paint_number(QPainter& painter, double y, double room_above, std::size_t number) {
    const QFontMetricsF metrics(painter.font());
    const bool above = room_above > metrics.ascent() + mm(1);
    painter.setPen(page_colour::soft_ink);
    painter.drawText(QPointF(mm(1), above ? y - pt(1.5) : y + metrics.ascent()), QString::number(number));
}

QTransform full_size() { return QTransform::fromScale(units_per_mm, units_per_mm); }

}  // namespace

FullSizeOutline::FullSizeOutline(const Piece& piece, const PieceStudy& study, bool lies_flat)
    : outline_(std::make_shared<const PieceOutline>(piece, study,
                                                    lies_flat ? OutlineView::above : OutlineView::front)),
      lies_flat_(lies_flat) {}

QSizeF FullSizeOutline::size() const { return outline_->bounds().size() * units_per_mm; }

void FullSizeOutline::paint(QPainter& painter, QPointF top_left) const {
    painter.save();
    painter.translate(top_left - outline_->bounds().topLeft() * units_per_mm);
    painter.setFont(body_font(6.5));
    painter.setBrush(Qt::NoBrush);
    paint_rounds(painter);
    lies_flat_ ? paint_from_above(painter) : paint_from_side(painter);
    painter.setPen(outline_pen());
    painter.drawPath(full_size().map(outline_->path()));
    painter.restore();
}

void FullSizeOutline::paint_rounds(QPainter& painter) const {
    // The edge of what lies flat is the outline itself.
    const std::size_t end = std::max<std::size_t>(1, outline_->loops()) - (lies_flat_ ? 1 : 0);
    for (std::size_t loop = marked_rounds; loop < end; loop += marked_rounds) {
        if (!lies_flat_ && outline_->reach_of_loop(loop) <= least_marked_radius_mm) continue;
        const QPolygonF line = full_size().map(outline_->loop_line(loop));
        painter.setPen(mark_pen());
        painter.drawPolyline(line);
        const double y =
            mm(lies_flat_ ? outline_->loop_line(loop).boundingRect().top() : outline_->middle_of_loop(loop));
        paint_number(painter, y, y - mm(outline_->bounds().top()), loop);
    }
}

void FullSizeOutline::paint_from_side(QPainter& painter) const {
    painter.setPen(axis_pen());
    painter.drawLine(QPointF(0, mm(outline_->bounds().top())), QPointF(0, mm(outline_->bounds().bottom())));
}

void FullSizeOutline::paint_from_above(QPainter& painter) const {
    painter.setPen(axis_pen());
    painter.drawLine(QPointF(-mm(4), 0), QPointF(mm(4), 0));
    painter.drawLine(QPointF(0, -mm(4)), QPointF(0, mm(4)));
}

}  // namespace roundwright::render
