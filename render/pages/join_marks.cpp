#include "render/pages/join_marks.h"

#include <algorithm>

#include <QFontMetricsF>
#include <QPainter>

#include "render/pages/layout/page_style.h"

namespace roundwright::render {
namespace {

constexpr double ring_radius = mm(2.3);
constexpr double step = mm(5.4);
constexpr double beside = mm(4.6);  // from the drawing to the middle of a ring
constexpr double dot = mm(0.65);

/// Heights as near to the wished ones as a step between neighbours allows: pushed down in turn, then up again
/// from the lower end.
std::vector<double> spread(const std::vector<JoinMark>& marks, const QRectF& drawing) {
    std::vector<double> heights;
    for (const JoinMark& mark : marks) {
        const double wished = std::max(mark.place.y(), drawing.top() + ring_radius);
        heights.push_back(heights.empty() ? wished : std::max(wished, heights.back() + step));
    }
    double below = std::max(drawing.bottom() - ring_radius,
                            drawing.top() + ring_radius + step * (static_cast<double>(marks.size()) - 1));
    for (auto height = heights.rbegin(); height != heights.rend(); ++height) {
        *height = std::min(*height, below);
        below = *height - step;
    }
    return heights;
}

void paint_mark(QPainter& painter, const JoinMark& mark, QPointF ring) {
    const double side = mark.place.x() < ring.x() ? -1 : 1;
    painter.setPen(QPen(page_colour::accent, pt(0.5)));
    painter.drawLine(ring + QPointF(side * ring_radius, 0), mark.place);
    painter.setPen(QPen(QColor(Qt::white), pt(0.5)));
    painter.setBrush(page_colour::accent);
    painter.drawEllipse(mark.place, dot, dot);
    paint_join_ring(painter, ring, mark.label);
}

void paint_side(QPainter& painter, const QRectF& drawing, std::vector<JoinMark> marks, double x) {
    std::ranges::sort(marks, {}, [](const JoinMark& mark) { return mark.place.y(); });
    const std::vector<double> heights = spread(marks, drawing);
    for (std::size_t i = 0; i < marks.size(); ++i) paint_mark(painter, marks[i], {x, heights[i]});
}

}  // namespace

double join_mark_room() { return beside + ring_radius + mm(0.5); }

double join_mark_column(std::size_t marks) { return step * static_cast<double>(marks); }

void paint_join_ring(QPainter& painter, QPointF middle, const QString& label) {
    painter.setPen(QPen(page_colour::accent, pt(0.8)));
    painter.setBrush(QColor(Qt::white));
    painter.drawEllipse(middle, ring_radius, ring_radius);
    painter.setFont(bold_font(7.5));
    const QFontMetricsF metrics(painter.font());
    painter.drawText(middle + QPointF(-metrics.horizontalAdvance(label) / 2, metrics.capHeight() / 2), label);
}

void paint_join_marks(QPainter& painter, const QRectF& drawing, const std::vector<JoinMark>& marks) {
    std::vector<JoinMark> left;
    std::vector<JoinMark> right;
    for (const JoinMark& mark : marks) {
        const double off = mark.place.x() - drawing.center().x();
        const bool to_left = off < -mm(0.5) || (off <= mm(0.5) && left.size() < right.size());
        (to_left ? left : right).push_back(mark);
    }
    paint_side(painter, drawing, std::move(left), drawing.left() - beside);
    paint_side(painter, drawing, std::move(right), drawing.right() + beside);
}

}  // namespace roundwright::render
