#include "render/pages/sections/join_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>

#include "render/pages/layout/dimension_line.h"
#include "render/pages/layout/page_style.h"
#include "render/wording/counted.h"
#include "render/wording/pattern/assembly_words.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/section_words.h"

namespace roundwright::render {
namespace {

constexpr double name_room = mm(22);
constexpr double above = mm(9);
constexpr int steps_of_a_ring = 48;
constexpr double pi = std::numbers::pi;

double angle_of(const SewingStep& step) {
    return step.onto_stitches > 0 ? 2 * pi * step.stitches_right / step.onto_stitches : 0;
}

}  // namespace

JoinDrawing::JoinDrawing(const PageContext& context, const SewingStep& step, QSizeF room)
    : study_(&context.study),
      step_(step),
      onto_name_(piece_name_words(context.toy(), step.onto)),
      outline_(std::make_shared<const PieceOutline>(context.toy().pieces[step.onto],
                                                    context.study.pieces[step.onto], OutlineView::front)),
      room_(room) {
    const QRectF bounds = outline_->bounds();
    const double across = (room.width() - 2 * name_room) / std::max(bounds.width(), 1.0);
    const double up = (room.height() - above) / std::max(bounds.height(), 1.0);
    scale_ = std::max(0.0, std::min({across, up, units_per_mm}));
    choose_view();
    find_lines();
}

void JoinDrawing::choose_view() {
    if (!in_gap()) return;
    const double degrees = angle_of(step_) * 180 / pi;
    const bool flattened = study_->pieces[step_.onto].measures().flattened;
    if (step_.copies > 1 || flattened) {
        view_degrees_ = std::abs(degrees) < 75 ? 0 : std::abs(degrees) > 105 ? 180 : 90;
        if (flattened && view_degrees_ == 90) view_degrees_ = 0;
        return;
    }
    view_degrees_ = static_cast<int>(std::lround(degrees / 90)) * 90;
}

QString JoinDrawing::seen_words() const {
    switch (view_degrees_) {
        case 90:
            return Pattern::tr("%1, from the side").arg(onto_name_);
        case -90:
            return Pattern::tr("%1, from the other side").arg(onto_name_);
        case 180:
        case -180:
            return Pattern::tr("%1, from the back").arg(onto_name_);
        default:
            return Pattern::tr("%1, from the front").arg(onto_name_);
    }
}

std::optional<QPointF> JoinDrawing::seen(const SurfacePlace& place) const {
    const SurfacePoint at = study_->together->solved[step_.onto].surface.at(place);
    const double turned = place.angle - view_degrees_ * pi / 180;
    if (study_->pieces[step_.onto].measures().flattened) {
        const double side = view_degrees_ == 0 ? 1 : -1;
        if (side * at.normal.z() < -1e-3) return std::nullopt;
        return QPointF(side * at.point.x(), -at.height_mm);
    }
    if (std::cos(turned) < -1e-3) return std::nullopt;
    return QPointF(at.radius_mm * std::sin(turned), -at.height_mm);
}

/// How far the sewn line reaches from its middle: an open edge as a ring, a straight one as a line.
double JoinDrawing::half_seam_mm() const {
    const double edge_mm = step_.edge_stitches * study_->gauge.stitch_width_mm;
    switch (step_.seam) {
        case Seam::edge:
            return edge_mm / (2 * pi);
        case Seam::straight:
            return edge_mm / 4;
        case Seam::layers:
            return study_->pieces[step_.piece].measures().width_mm / 2;
        default:
            return 0;
    }
}

JoinDrawing::Line JoinDrawing::line_on_fabric(double angle, double mirror) const {
    const FaceSurface& surface = study_->together->solved[step_.onto].surface;
    const double along = surface.along_of_loop(static_cast<int>(loop()));
    const double reach = half_seam_mm();
    const double radius = std::max(surface.at({along, angle}).radius_mm, reach / 2);
    const double turn = mirror * study_->toy.joins[step_.join].turn_degrees * pi / 180;
    const bool up_is_later = !study_->toy.pieces[step_.onto].starts_at_top;
    const bool straight = step_.seam == Seam::straight;
    Line line;
    line.closed = !straight;
    for (int i = 0; i <= steps_of_a_ring && reach > 0; ++i) {
        const double part = static_cast<double>(i) / steps_of_a_ring;
        const double right =
            straight ? reach * (2 * part - 1) * std::cos(turn) : reach * std::cos(2 * pi * part);
        const double up =
            straight ? reach * (2 * part - 1) * std::sin(turn) : reach * std::sin(2 * pi * part);
        const double at = std::clamp(along + (up_is_later ? up : -up), 0.0, surface.end_mm());
        if (const auto point = seen({at, angle + right / radius})) line.points_mm.push_back(*point);
    }
    if (line.points_mm.size() <= steps_of_a_ring) line.closed = false;
    return line;
}

void JoinDrawing::find_lines() {
    if (!in_gap() || loop() >= outline_->loops()) return;
    const double angle = angle_of(step_);
    const double along = study_->together->solved[step_.onto].surface.along_of_loop(static_cast<int>(loop()));
    const bool both = step_.copies > 1;
    for (const double side : both ? std::vector{-1.0, 1.0} : std::vector{1.0}) {
        const auto middle = seen({along, side * angle});
        if (!middle) continue;
        middles_mm_.push_back(*middle);
        lines_.push_back(line_on_fabric(side * angle, side));
    }
}

double JoinDrawing::height() const { return above + outline_->bounds().height() * scale_ + mm(2); }

void JoinDrawing::paint(QPainter& painter, QPointF top_left) const {
    painter.save();
    painter.translate(top_left.x() + room_.width() / 2,
                      top_left.y() + above - outline_->bounds().top() * scale_);
    paint_outline(painter);
    paint_rounds(painter);
    paint_lines(painter);
    paint_stitches(painter);
    painter.restore();
}

void JoinDrawing::paint_outline(QPainter& painter) const {
    painter.setPen(QPen(page_colour::ink, pt(0.8)));
    painter.setBrush(page_colour::tint);
    painter.drawPath(QTransform::fromScale(scale_, scale_).map(outline_->path()));
    painter.setPen(QPen(page_colour::drawn, pt(0.4), Qt::DashDotLine));
    const QRectF bounds = outline_->bounds();
    painter.drawLine(on_page({0, bounds.bottom()}), on_page({0, bounds.top()}));
}

void JoinDrawing::paint_rounds(QPainter& painter) const {
    if (step_.place != SewnPlace::gap && step_.place != SewnPlace::around) return;
    if (loop() >= outline_->loops()) return;
    const QPolygonF line = QTransform::fromScale(scale_, scale_).map(outline_->loop_line(loop()));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(page_colour::drawn, pt(0.5), Qt::DotLine));
    painter.drawPolyline(line);
    const double y = outline_->middle_of_loop(loop()) * scale_;
    const double left = outline_->bounds().left() * scale_ - mm(2);
    painter.drawLine(QPointF(left, y), QPointF(-outline_->reach_of_loop(loop()) * scale_, y));
    painter.setFont(body_font(7));
    painter.setPen(page_colour::soft_ink);
    const QString name = Pattern::tr("rounds %1 | %2").arg(step_.round).arg(step_.round + 1);
    const QFontMetricsF metrics(painter.font());
    painter.drawText(QPointF(left - mm(1) - metrics.horizontalAdvance(name), y + metrics.capHeight() / 2),
                     name);
}

void JoinDrawing::paint_lines(QPainter& painter) const {
    painter.setPen(QPen(page_colour::accent, pt(1.6), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    const QTransform to_page = QTransform::fromScale(scale_, scale_);
    for (const Line& line : lines_) {
        const QPolygonF shape =
            to_page.map(QPolygonF(QList<QPointF>(line.points_mm.begin(), line.points_mm.end())));
        if (line.closed)
            painter.drawPolygon(shape);
        else if (shape.size() > 1)
            painter.drawPolyline(shape);
    }
    if (!in_gap()) {
        const std::size_t last = outline_->loops() > 0 ? outline_->loops() - 1 : 0;
        const std::size_t at = step_.place == SewnPlace::start       ? 0
                               : step_.place == SewnPlace::last_edge ? last
                                                                     : std::min(loop(), last);
        if (outline_->loops() > 0) painter.drawPolyline(to_page.map(outline_->loop_line(at)));
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(page_colour::accent);
    for (const QPointF& middle : middles_mm_) painter.drawEllipse(on_page(middle), mm(0.7), mm(0.7));
}

/// Above the piece: from one of a pair to the other, or from the middle of the side that is seen.
void JoinDrawing::paint_stitches(QPainter& painter) const {
    if (middles_mm_.empty()) return;
    QPointF left = on_page(middles_mm_.front());
    QPointF right = on_page(middles_mm_.back());
    const bool both = middles_mm_.size() > 1;
    double stitches = 2 * std::abs(step_.stitches_right);
    if (both && view_degrees_ == 180) stitches = step_.onto_stitches - stitches;
    if (!both) {
        const double middle = view_degrees_ * step_.onto_stitches / 360.0;
        stitches = std::remainder(step_.stitches_right - middle, std::max(1, step_.onto_stitches));
        left = {0, left.y()};
    }
    // From behind, the one on the left is on the viewer's right.
    if (left.x() > right.x()) std::swap(left, right);
    const int count = static_cast<int>(std::lround(std::abs(stitches)));
    if (count == 0 || right.x() - left.x() < mm(1)) return;
    const double top = outline_->bounds().top() * scale_ - mm(3);
    painter.setPen(QPen(page_colour::drawn, pt(0.35)));
    for (const QPointF& end : {left, right}) painter.drawLine(end, QPointF(end.x(), top));
    paint_level_dimension(painter, {left.x(), top}, {right.x(), top}, stitches_words(count), true);
}

}  // namespace roundwright::render
