#include "app/reshape/outline_placement.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "render/drawing/smooth_path.h"

namespace roundwright::app {
namespace {

constexpr double margin = 28;
constexpr double sharpest = 150;     // degrees; what turns more is a fold of the fabric
constexpr double reach_pixels = 14;  // a press this near takes a point

double middle_of(const Silhouette& outline) {
    const auto lower = [](const Vec2& a, const Vec2& b) { return a.y() < b.y(); };
    const auto [low, high] = std::minmax_element(outline.points.begin(), outline.points.end(), lower);
    return (low->y() + high->y()) / 2;
}

}  // namespace

OutlinePlacement OutlinePlacement::of(QSize room, bool starts_at_top,
                                      std::initializer_list<const Silhouette*> outlines) {
    double radius = 0.5;
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    for (const Silhouette* outline : outlines) {
        if (outline == nullptr) continue;
        for (const Vec2& p : outline->points) {
            radius = std::max(radius, p.x());
            low = std::min(low, p.y());
            high = std::max(high, p.y());
        }
    }
    if (!(low <= high)) low = high = 0;
    OutlinePlacement placement;
    placement.pixels_per_mm = std::max(std::min((room.width() - 2 * margin) / (2 * radius),
                                                (room.height() - 2 * margin) / std::max(high - low, 1.0)),
                                       0.01);
    placement.upwards = starts_at_top ? 1 : -1;
    const double down = placement.upwards * (low + high) / 2 * placement.pixels_per_mm;
    placement.axis = QPointF(room.width() / 2.0, room.height() / 2.0 - down);
    return placement;
}

QPointF OutlinePlacement::at(const Vec2& point) const {
    return axis + QPointF(point.x(), upwards * point.y()) * pixels_per_mm;
}

Vec2 OutlinePlacement::way(QPointF from, QPointF to) const {
    const QPointF moved = (to - from) / pixels_per_mm;
    return {from.x() < axis.x() ? -moved.x() : moved.x(), upwards * moved.y()};
}

QPainterPath OutlinePlacement::both_sides(const Silhouette& outline) const {
    const auto& points = outline.points;
    if (points.empty()) return {};
    const bool closed_start = points.front().x() <= 0, closed_end = points.back().x() <= 0;
    QPolygonF right, left;
    for (const Vec2& p : points) {
        right << at(p);
        left << at(Vec2(-p.x(), p.y()));
    }
    std::reverse(left.begin(), left.end());
    if (!closed_start && !closed_end) {
        QPainterPath path = render::smooth_path(right, false, sharpest);
        path.connectPath(render::smooth_path(left, false, sharpest));
        path.closeSubpath();
        return path;
    }
    // Over a pole the line goes on, so that it is as round there as beside it.
    if (!closed_start) std::swap(left, right);
    QPolygonF around = left;
    around.append(right.mid(1));
    const bool ring = closed_start && closed_end;
    if (ring) around.removeLast();
    QPainterPath path = render::smooth_path(around, ring, sharpest);
    path.closeSubpath();
    return path;
}

QPainterPath OutlinePlacement::one_side(const Silhouette& outline) const {
    QPolygonF line;
    for (const Vec2& p : outline.points) line << at(p);
    if (line.size() < 3 || outline.points.front().x() > 0) return render::smooth_path(line, false, sharpest);
    // The first stretch leaves the pole level, as it does with the other side beside it.
    QPolygonF with_mirror{at(Vec2(-outline.points[1].x(), outline.points[1].y()))};
    with_mirror.append(line);
    const QPainterPath longer = render::smooth_path(with_mirror, false, sharpest);
    QPainterPath path;
    path.moveTo(line.front());
    for (int k = 4; k + 2 < longer.elementCount(); k += 3)
        path.cubicTo(longer.elementAt(k), longer.elementAt(k + 1), longer.elementAt(k + 2));
    return path;
}

int OutlinePlacement::point_near(QPointF position, const Silhouette& outline) const {
    int nearest = -1;
    double least = reach_pixels;
    for (std::size_t i = 0; i < outline.points.size(); ++i) {
        for (const double side : {1.0, -1.0}) {
            const Vec2& p = outline.points[i];
            const QPointF off = at(Vec2(side * p.x(), p.y())) - position;
            const double distance = std::hypot(off.x(), off.y());
            if (distance >= least) continue;
            least = distance;
            nearest = static_cast<int>(i);
        }
    }
    return nearest;
}

Silhouette middles_met(Silhouette outline, const Silhouette& other) {
    if (outline.points.empty() || other.points.empty()) return outline;
    const double raised = middle_of(other) - middle_of(outline);
    for (Vec2& p : outline.points) p.y() += raised;
    return outline;
}

}  // namespace roundwright::app
