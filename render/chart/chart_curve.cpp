#include "render/chart/chart_curve.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright::render {
namespace {

constexpr double pi = std::numbers::pi;
/// Near the start the gap would take up the whole loop.
constexpr double most_of_loop = 0.16;

}  // namespace

double ChartCurve::length(double distance) const { return 2 * straight_ + 2 * pi * distance; }

ChartCurve::Place ChartCurve::place(double share, double distance, bool whole) const {
    const double gap = whole ? 0 : std::min(gap_, most_of_loop * length(distance));
    Place found = anticlockwise(share, distance, gap);
    if (!clockwise_) return found;
    return {{found.at.x(), -found.at.y()}, {found.outward.x(), -found.outward.y()}};
}

ChartCurve::Place ChartCurve::anticlockwise(double share, double distance, double gap) const {
    const double whole = length(distance);
    double along = gap / 2 + share * (whole - gap);
    const double quarter = pi * distance / 2, half = straight_ / 2;
    const auto on_arc = [&](double middle, double angle) {
        const QPointF out(std::cos(angle), std::sin(angle));
        return Place{QPointF(middle, 0) + distance * out, out};
    };
    if (along <= quarter || distance <= 0) return on_arc(half, distance > 0 ? along / distance : 0);
    along -= quarter;
    if (along <= straight_) return {{half - along, distance}, {0, 1}};
    along -= straight_;
    if (along <= 2 * quarter) return on_arc(-half, pi / 2 + along / distance);
    along -= 2 * quarter;
    if (along <= straight_) return {{-half + along, -distance}, {0, -1}};
    return on_arc(half, 3 * pi / 2 + (along - straight_) / distance);
}

}  // namespace roundwright::render
