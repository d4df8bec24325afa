#include "render/drawing/smooth_path.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright::render {
namespace {

double length(const QPointF& way) { return std::hypot(way.x(), way.y()); }

/// The direction of the curve at a point, of unit length; none at a corner or an end.
QPointF tangent(const QPointF& before, const QPointF& here, const QPointF& after, double least_cosine) {
    const QPointF in = here - before, out = after - here;
    const double a = length(in), b = length(out);
    if (a <= 0 || b <= 0 || QPointF::dotProduct(in, out) < least_cosine * a * b) return {};
    // Along the chord of the neighbours: a short step beside a long one hardly turns it.
    const QPointF across = in + out;
    return across / length(across);
}

}  // namespace

QPainterPath smooth_path(const QPolygonF& points, bool closed, double corner_degrees) {
    QPainterPath path;
    const qsizetype many = points.size();
    if (many < 2) return path;
    const double least_cosine = std::cos(corner_degrees * std::numbers::pi / 180);
    const auto at = [&](qsizetype k) {
        return closed ? points[(k + many) % many] : points[std::clamp<qsizetype>(k, 0, many - 1)];
    };
    path.moveTo(points.front());
    for (qsizetype k = 0; k < (closed ? many : many - 1); ++k) {
        const QPointF from = at(k), to = at(k + 1);
        // Not beyond what a short neighbour bears out, or the curve would swing.
        const double here = length(to - from);
        const double leave = std::min(here, 2 * length(from - at(k - 1))) / 3;
        const double come = std::min(here, 2 * length(at(k + 2) - to)) / 3;
        const QPointF leaving = tangent(at(k - 1), from, to, least_cosine);
        const QPointF coming = tangent(from, to, at(k + 2), least_cosine);
        path.cubicTo(leaving.isNull() ? from + (to - from) / 3 : from + leave * leaving,
                     coming.isNull() ? to - (to - from) / 3 : to - come * coming, to);
    }
    if (closed) path.closeSubpath();
    return path;
}

}  // namespace roundwright::render
