#include "render/drawing/region_outline.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace roundwright::render {
namespace {

/// Walks around a region along the sides of its cells, the region to the left. Directions: 0 right, 1 up, 2
/// left, 3 down. A side is named by the corner it starts at and its direction.
class BoundaryWalker {
  public:
    explicit BoundaryWalker(const CellRegion& region)
        : region_(region), seen_(static_cast<std::size_t>((region.width + 1) * (region.height + 1)), 0) {}

    std::vector<QPolygonF> walk_all() {
        std::vector<QPolygonF> found;
        // Every boundary has a side that runs right: a cell inside above it, none below.
        for (int row = 0; row <= region_.height; ++row)
            for (int column = 0; column < region_.width; ++column)
                if (region_.has(column, row) && !region_.has(column, row - 1) && !seen(column, row))
                    found.push_back(walk(column, row));
        return found;
    }

  private:
    std::uint8_t& seen(int column, int row) {
        return seen_[static_cast<std::size_t>(row) * static_cast<std::size_t>(region_.width + 1) +
                     static_cast<std::size_t>(column)];
    }

    QPolygonF walk(int column, int row) {
        static constexpr int dx[] = {1, 0, -1, 0}, dy[] = {0, 1, 0, -1};
        QPolygonF polygon;
        const int start_column = column, start_row = row;
        int direction = 0;
        do {
            if (direction == 0) seen(column, row) = 1;
            polygon.append(QPointF(column + dx[direction] / 2.0, row + dy[direction] / 2.0));
            column += dx[direction];
            row += dy[direction];
            direction = next_direction(column, row, direction);
        } while (column != start_column || row != start_row || direction != 0);
        return polygon;
    }

    /// Turns right where both cells ahead are free of choice, so that cells that touch at a corner only are
    /// walked apart.
    [[nodiscard]] int next_direction(int column, int row, int direction) const {
        static constexpr int left_x[] = {0, -1, -1, 0}, left_y[] = {0, 0, -1, -1};
        static constexpr int right_x[] = {0, 0, -1, -1}, right_y[] = {-1, 0, 0, -1};
        const bool left = region_.has(column + left_x[direction], row + left_y[direction]);
        const bool right = region_.has(column + right_x[direction], row + right_y[direction]);
        if (!left) return (direction + 1) % 4;
        return right ? (direction + 3) % 4 : direction;
    }

    const CellRegion& region_;
    std::vector<std::uint8_t> seen_;
};

double distance_to_line(const QPointF& p, const QPointF& a, const QPointF& b) {
    const QPointF along = b - a, from = p - a;
    const double length = std::hypot(along.x(), along.y());
    if (length < 1e-12) return std::hypot(from.x(), from.y());
    return std::abs(along.x() * from.y() - along.y() * from.x()) / length;
}

void keep_farthest(const QPolygonF& points, qsizetype first, qsizetype last, double tolerance,
                   std::vector<bool>& kept) {
    std::vector<std::pair<qsizetype, qsizetype>> waiting{{first, last}};
    while (!waiting.empty()) {
        const auto [from, to] = waiting.back();
        waiting.pop_back();
        double most = tolerance;
        qsizetype farthest = -1;
        for (qsizetype k = from + 1; k < to; ++k) {
            const double distance = distance_to_line(points[k], points[from], points[to]);
            if (distance > most) {
                most = distance;
                farthest = k;
            }
        }
        if (farthest < 0) continue;
        kept[static_cast<std::size_t>(farthest)] = true;
        waiting.emplace_back(from, farthest);
        waiting.emplace_back(farthest, to);
    }
}

qsizetype farthest_from(const QPolygonF& points, const QPointF& place) {
    const auto nearer = [&](const QPointF& a, const QPointF& b) {
        return std::hypot(a.x() - place.x(), a.y() - place.y()) <
               std::hypot(b.x() - place.x(), b.y() - place.y());
    };
    return std::max_element(points.begin(), points.end(), nearer) - points.begin();
}

/// Both ends of the two halves are real corners: the point farthest from the middle, and the one farthest
/// from that.
QPolygonF simplified(QPolygonF points, double tolerance) {
    if (points.size() < 4) return points;
    std::rotate(points.begin(), points.begin() + farthest_from(points, points.boundingRect().center()),
                points.end());
    const qsizetype half = farthest_from(points, points.front());
    points.append(points.front());
    std::vector<bool> kept(static_cast<std::size_t>(points.size()), false);
    kept[0] = kept[static_cast<std::size_t>(half)] = true;
    keep_farthest(points, 0, half, tolerance, kept);
    keep_farthest(points, half, points.size() - 1, tolerance, kept);
    QPolygonF found;
    for (qsizetype k = 0; k + 1 < points.size(); ++k)
        if (kept[static_cast<std::size_t>(k)]) found.append(points[k]);
    return found;
}

}  // namespace

double signed_area(const QPolygonF& polygon) {
    double twice = 0;
    for (qsizetype k = 0; k < polygon.size(); ++k) {
        const QPointF& a = polygon[k];
        const QPointF& b = polygon[(k + 1) % polygon.size()];
        twice += a.x() * b.y() - a.y() * b.x();
    }
    return twice / 2;
}

std::vector<QPolygonF> region_boundaries(const CellRegion& region, double tolerance_cells,
                                         double least_cells) {
    std::vector<QPolygonF> found;
    for (auto& boundary : BoundaryWalker(region).walk_all()) {
        if (std::abs(signed_area(boundary)) < least_cells) continue;
        found.push_back(simplified(std::move(boundary), tolerance_cells));
    }
    return found;
}

}  // namespace roundwright::render
