#include "render/illustration/profile_drawing.h"

#include <algorithm>
#include <cmath>

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>

#include "render/drawing/smooth_path.h"

namespace roundwright::render {
namespace {

struct Node {
    double radius, z;
};

/// The half section from the start to the end, with the poles of the ends that are closed.
std::vector<Node> half_section(const Shape& shape, const ProfileOptions& options) {
    std::vector<Node> nodes;
    if (options.closed_below && shape.radius_mm.front() > 0) nodes.push_back({0, shape.first_pole_z_mm});
    for (std::size_t i = 0; i < shape.radius_mm.size(); ++i)
        nodes.push_back({shape.reach_mm(i), shape.z_mm[i]});
    if (options.closed_above && shape.radius_mm.back() > 0) nodes.push_back({0, shape.last_pole_z_mm});
    return nodes;
}

DrawnProfile placed(const std::vector<Node>& nodes, const ProfileOptions& options) {
    double widest = 0, low = nodes.front().z, high = low;
    for (const auto& node : nodes) {
        widest = std::max(widest, node.radius);
        low = std::min(low, node.z);
        high = std::max(high, node.z);
    }
    const double margin = options.number_every > 0 ? 2.5 * options.text_height : 0;
    const QRectF room = options.target.adjusted(margin, 0.8 * margin, -margin, -0.8 * margin);
    DrawnProfile drawn;
    drawn.up = options.starts_at_top ? 1 : -1;
    drawn.units_per_mm = options.units_per_mm;
    if (drawn.units_per_mm <= 0)
        drawn.units_per_mm =
            std::min(room.width() / std::max(2 * widest, 1e-6), room.height() / std::max(high - low, 1e-6));
    drawn.axis =
        QPointF(room.center().x(), room.center().y() - drawn.up * (low + high) / 2 * drawn.units_per_mm);
    drawn.bounds = QRectF(drawn.at(-widest, low), drawn.at(widest, high)).normalized();
    return drawn;
}

QPolygonF side(const std::vector<Node>& nodes, const DrawnProfile& drawn, double sign) {
    QPolygonF found;
    for (const auto& node : nodes) found.append(drawn.at(sign * node.radius, node.z));
    return found;
}

void fill_section(QPainter& painter, const std::vector<Node>& nodes, const DrawnProfile& drawn,
                  const QColor& fill) {
    QPolygonF left = side(nodes, drawn, -1);
    std::reverse(left.begin(), left.end());
    QPainterPath path = smooth_path(side(nodes, drawn, 1), false);
    path.connectPath(smooth_path(left, false));
    path.closeSubpath();
    painter.fillPath(path, fill);
}

bool is_lit(const ProfileOptions& options, std::size_t round) {
    const auto& lit = options.lit_rounds;
    return std::find(lit.begin(), lit.end(), static_cast<int>(round)) != lit.end();
}

void draw_loops(QPainter& painter, const Shape& shape, const DrawnProfile& drawn,
                const ProfileOptions& options) {
    const double line = options.text_height * 0.05;
    for (std::size_t i = 0; i < shape.radius_mm.size(); ++i) {
        const bool lit = i > 0 && is_lit(options, i - 1);
        painter.setPen(QPen(lit ? options.accent : options.faint, lit ? 2 * line : line));
        painter.drawLine(drawn.at(-shape.reach_mm(i), shape.z_mm[i]),
                         drawn.at(shape.reach_mm(i), shape.z_mm[i]));
    }
}

/// The fabric itself: a lit round's stretch of it in the accent.
void draw_fabric(QPainter& painter, const Shape& shape, const std::vector<Node>& nodes,
                 const DrawnProfile& drawn, const ProfileOptions& options) {
    const double line = options.text_height * 0.16;
    painter.setPen(QPen(options.ink, line, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    for (const double sign : {-1.0, 1.0}) painter.drawPath(smooth_path(side(nodes, drawn, sign), false));
    painter.setPen(QPen(options.accent, 1.6 * line, Qt::SolidLine, Qt::RoundCap));
    for (std::size_t i = 1; i < shape.radius_mm.size(); ++i)
        for (const double sign : {-1.0, 1.0})
            if (is_lit(options, i - 1))
                painter.drawLine(drawn.at(sign * shape.reach_mm(i - 1), shape.z_mm[i - 1]),
                                 drawn.at(sign * shape.reach_mm(i), shape.z_mm[i]));
}

/// The axis, as a chain line a little longer than the piece.
void draw_axis(QPainter& painter, const DrawnProfile& drawn, const ProfileOptions& options) {
    QPen pen(options.faint, options.text_height * 0.06);
    pen.setDashPattern({16, 5, 3, 5});
    painter.setPen(pen);
    const double past = options.text_height * 0.6;
    painter.drawLine(QPointF(drawn.axis.x(), drawn.bounds.top() - past),
                     QPointF(drawn.axis.x(), drawn.bounds.bottom() + past));
}

/// Numbers beside the middle of their rounds, on the outer side; one that would touch the last is left out.
void draw_numbers(QPainter& painter, const Shape& shape, const DrawnProfile& drawn,
                  const ProfileOptions& options) {
    painter.setPen(options.ink);
    const double text = options.text_height;
    QRectF last;
    for (std::size_t i = 1; i < shape.radius_mm.size(); ++i) {
        if (i != 1 && i % static_cast<std::size_t>(options.number_every) != 0 &&
            i + 1 != shape.radius_mm.size())
            continue;
        const QPointF from = drawn.at(shape.reach_mm(i - 1), shape.z_mm[i - 1]);
        const QPointF to = drawn.at(shape.reach_mm(i), shape.z_mm[i]);
        const QPointF way = to - from;
        const double length = std::max(1e-9, std::hypot(way.x(), way.y()));
        const QPointF out = QPointF(-way.y(), way.x()) / length * (drawn.up < 0 ? 1 : -1);
        const QPointF middle = (from + to) / 2 + out * 1.1 * text;
        const QRectF box(middle.x() - text, middle.y() - 0.6 * text, 2 * text, 1.2 * text);
        if (box.intersects(last)) continue;
        painter.drawText(box, Qt::AlignCenter, QString::number(i));
        last = box;
    }
}

void set_text_height(QPainter& painter, double height) {
    QFont font = painter.font();
    const double now = QFontMetricsF(font, painter.device()).height();
    if (now > 0 && font.pointSizeF() > 0) font.setPointSizeF(font.pointSizeF() * height * 1.2 / now);
    painter.setFont(font);
}

}  // namespace

DrawnProfile draw_profile(QPainter& painter, const Shape& shape, const ProfileOptions& options) {
    if (!shape.usable()) return {};
    const auto nodes = half_section(shape, options);
    const DrawnProfile drawn = placed(nodes, options);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    fill_section(painter, nodes, drawn, options.fill);
    draw_loops(painter, shape, drawn, options);
    draw_axis(painter, drawn, options);
    draw_fabric(painter, shape, nodes, drawn, options);
    set_text_height(painter, options.text_height);
    if (options.number_every > 0) draw_numbers(painter, shape, drawn, options);
    painter.restore();
    return drawn;
}

}  // namespace roundwright::render
