#include "core/reshape/silhouette.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace roundwright {
namespace {

struct Reach {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
};

Reach reach_of(const Silhouette& silhouette) {
    Reach reach;
    for (const Vec2& p : silhouette.points) {
        reach.low = std::min(reach.low, p.y());
        reach.high = std::max(reach.high, p.y());
    }
    return reach;
}

double squared_distance(const Vec2& p, const Vec2& a, const Vec2& b) {
    const Vec2 along = b - a;
    const double length = along.squaredNorm();
    const double t = length > 0 ? std::clamp((p - a).dot(along) / length, 0.0, 1.0) : 0;
    return (p - a - t * along).squaredNorm();
}

double squared_distance(const Vec2& p, const Silhouette& outline, double raised) {
    double least = std::numeric_limits<double>::infinity();
    const Vec2 at = p - Vec2(0, raised);
    for (std::size_t i = 0; i + 1 < outline.points.size(); ++i)
        least = std::min(least, squared_distance(at, outline.points[i], outline.points[i + 1]));
    return least;
}

}  // namespace

bool is_usable(const Silhouette& silhouette) {
    const auto sound = [](const Vec2& p) { return p.allFinite() && p.x() >= 0; };
    return silhouette.points.size() >= 2 &&
           std::all_of(silhouette.points.begin(), silhouette.points.end(), sound) &&
           arc_lengths(silhouette).back() > 0 && width_mm(silhouette) > 0;
}

std::vector<double> arc_lengths(const Silhouette& silhouette) {
    std::vector<double> lengths(silhouette.points.size(), 0.0);
    for (std::size_t i = 1; i < lengths.size(); ++i)
        lengths[i] = lengths[i - 1] + (silhouette.points[i] - silhouette.points[i - 1]).norm();
    return lengths;
}

double width_mm(const Silhouette& silhouette) {
    double radius = 0;
    for (const Vec2& p : silhouette.points) radius = std::max(radius, p.x());
    return 2 * radius;
}

double height_mm(const Silhouette& silhouette) {
    if (silhouette.points.empty()) return 0;
    const Reach reach = reach_of(silhouette);
    return reach.high - reach.low;
}

Silhouette resampled(const Silhouette& silhouette, double step_mm) {
    Silhouette dense;
    if (silhouette.points.empty()) return dense;
    dense.points.push_back(silhouette.points.front());
    for (std::size_t i = 1; i < silhouette.points.size(); ++i) {
        const Vec2& a = silhouette.points[i - 1];
        const Vec2& b = silhouette.points[i];
        const int parts = std::max(1, static_cast<int>(std::ceil((b - a).norm() / step_mm)));
        for (int k = 1; k <= parts; ++k) dense.points.push_back(a + (b - a) * (double(k) / parts));
    }
    return dense;
}

Silhouette thinned(const Silhouette& silhouette, double step_mm) {
    Silhouette thin;
    const auto along = arc_lengths(silhouette);
    double next = 0;
    for (std::size_t i = 0; i < along.size(); ++i) {
        if (along[i] < next && i + 1 < along.size()) continue;
        thin.points.push_back(silhouette.points[i]);
        next = along[i] + step_mm;
    }
    return thin;
}

Silhouette silhouette_of(const Shape& shape, MeridianEnd last) {
    Silhouette outline;
    for (std::size_t i = 0; i < shape.radius_mm.size(); ++i) {
        const Vec2 loop(shape.radius_mm[i], shape.z_mm[i]);
        outline.points.push_back(shape.flattened() ? Vec2(shape.sections[i].fold() + Vec2(0, loop.y()))
                                                   : loop);
    }
    if (last == MeridianEnd::drawn_closed && shape.usable())
        outline.points.emplace_back(0, shape.last_pole_z_mm);
    return outline;
}

double distance_mm(const Silhouette& a, const Silhouette& b) {
    if (a.points.size() < 2 || b.points.size() < 2) return 0;
    const Reach in_a = reach_of(a);
    const Reach in_b = reach_of(b);
    const double raised = ((in_a.low + in_a.high) - (in_b.low + in_b.high)) / 2;
    double sum = 0;
    for (const Vec2& p : a.points) sum += squared_distance(p, b, raised);
    for (const Vec2& p : b.points) sum += squared_distance(p, a, -raised);
    return std::sqrt(sum / double(a.points.size() + b.points.size()));
}

}  // namespace roundwright
