#include "render/pages/sections/full_size_outline.h"

#include <QFontMetricsF>
#include <QPainter>

#include "render/pages/layout/page_style.h"
#include "render/pages/outline.h"

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

}  // namespace

QSizeF FullSizeOutline::size() const {
    return {mm(shape_->width_mm), mm(lies_flat_ ? shape_->width_mm : shape_->height_mm)};
}

bool FullSizeOutline::same_as(const FullSizeOutline& other) const {
    return shape_->radius_mm == other.shape_->radius_mm && shape_->z_mm == other.shape_->z_mm &&
           shape_->sections == other.shape_->sections && starts_at_top_ == other.starts_at_top_;
}

void FullSizeOutline::paint(QPainter& painter, QPointF top_left) const {
    painter.save();
    painter.translate(top_left + QPointF(size().width() / 2, 0));
    painter.setFont(body_font(6.5));
    painter.setBrush(Qt::NoBrush);
    lies_flat_ ? paint_from_above(painter) : paint_from_side(painter);
    painter.restore();
}

void FullSizeOutline::paint_from_side(QPainter& painter) const {
    const double height = size().height();
    for (std::size_t loop = marked_rounds; loop < shape_->radius_mm.size(); loop += marked_rounds) {
        if (shape_->reach_mm(loop) > least_marked_radius_mm) paint_round(painter, loop);
    }
    painter.setPen(axis_pen());
    painter.drawLine(QPointF(0, 0), QPointF(0, height));
    painter.translate(0, height);
    painter.setPen(outline_pen());
    painter.drawPath(
        QTransform::fromScale(units_per_mm, units_per_mm).map(silhouette_mm(*shape_, starts_at_top_)));
}

void FullSizeOutline::paint_round(QPainter& painter, std::size_t loop) const {
    const double y = size().height() - mm(standing_height_mm(*shape_, starts_at_top_, loop));
    painter.setPen(mark_pen());
    painter.drawPolyline(QTransform(units_per_mm, 0, 0, units_per_mm, 0, size().height())
                             .map(loop_line_mm(*shape_, starts_at_top_, loop)));
    paint_number(painter, y, y, loop);
}

void FullSizeOutline::paint_from_above(QPainter& painter) const {
    const double radius = size().width() / 2;
    painter.translate(0, radius);
    for (std::size_t loop = marked_rounds; loop + 1 < shape_->radius_mm.size(); loop += marked_rounds) {
        const double r = mm(shape_->radius_mm[loop]);
        painter.setPen(mark_pen());
        painter.drawEllipse(QPointF(), r, r);
        paint_number(painter, -r, radius - r, loop);
    }
    painter.setPen(axis_pen());
    painter.drawLine(QPointF(-mm(4), 0), QPointF(mm(4), 0));
    painter.drawLine(QPointF(0, -mm(4)), QPointF(0, mm(4)));
    painter.setPen(outline_pen());
    painter.drawEllipse(QPointF(), radius, radius);
}

}  // namespace roundwright::render
