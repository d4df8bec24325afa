#include "render/illustration/outline_snap.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <limits>

namespace roundwright::render {
namespace {

constexpr double corner_cosine = 0.766;  // of 40 degrees, where the smooth path keeps its corners

/// A point of a boundary with the way out of the mesh, and how far the mesh was found to reach there.
struct Feeler {
    QPointF* point;
    QPointF at, out;
    bool corner = false;
    double furthest = -std::numeric_limits<double>::infinity();
    QPointF outermost{};
    bool at_vertex = false;  ///< found at a vertex, as a corner is where there is one
};

QPointF unit(const QPointF& way) {
    const double length = std::hypot(way.x(), way.y());
    return length > 0 ? way / length : QPointF();
}

std::vector<Feeler> feelers_of(std::vector<QPolygonF>& boundaries) {
    std::vector<Feeler> all;
    for (QPolygonF& boundary : boundaries) {
        const qsizetype many = boundary.size();
        for (qsizetype k = 0; k < many; ++k) {
            const QPointF in = unit(boundary[k] - boundary[(k + many - 1) % many]);
            const QPointF on = unit(boundary[(k + 1) % many] - boundary[k]);
            const QPointF along = unit(in + on);
            all.push_back({&boundary[k], boundary[k], QPointF(along.y(), -along.x()),
                           QPointF::dotProduct(in, on) < corner_cosine});
        }
    }
    return all;
}

/// Feelers by squares of the plane as wide as their reach, so that a triangle meets only those near it.
class FeelerGrid {
  public:
    FeelerGrid(std::vector<Feeler>& feelers, double reach_mm) : reach_mm_(reach_mm), square_(2 * reach_mm) {
        QRectF bounds(feelers.front().at, QSizeF(0, 0));
        for (const Feeler& feeler : feelers) bounds |= QRectF(feeler.at, QSizeF(1e-9, 1e-9));
        origin_ = bounds.topLeft();
        columns_ = static_cast<int>(bounds.width() / square_) + 1;
        rows_ = static_cast<int>(bounds.height() / square_) + 1;
        squares_.resize(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_));
        for (Feeler& feeler : feelers)
            squares_[index(column(feeler.at.x()), row(feeler.at.y()))].push_back(&feeler);
    }

    void meet(const std::array<QPointF, 3>& corners) {
        const auto [left, right] = std::minmax({corners[0].x(), corners[1].x(), corners[2].x()});
        const auto [low, high] = std::minmax({corners[0].y(), corners[1].y(), corners[2].y()});
        const int last_row = row(high + reach_mm_), last_column = column(right + reach_mm_);
        for (int r = row(low - reach_mm_); r <= last_row; ++r)
            for (int c = column(left - reach_mm_); c <= last_column; ++c)
                for (Feeler* feeler : squares_[index(c, r)]) touch(*feeler, corners);
    }

  private:
    [[nodiscard]] int column(double x) const {
        return static_cast<int>(std::clamp((x - origin_.x()) / square_, 0.0, columns_ - 1.0));
    }
    [[nodiscard]] int row(double y) const {
        return static_cast<int>(std::clamp((y - origin_.y()) / square_, 0.0, rows_ - 1.0));
    }
    [[nodiscard]] std::size_t index(int column, int row) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
               static_cast<std::size_t>(column);
    }

    void touch(Feeler& feeler, const std::array<QPointF, 3>& corners) const {
        if (feeler.corner) touch_corner(feeler, corners);
        if (feeler.at_vertex) return;
        const QPointF along(-feeler.out.y(), feeler.out.x());
        for (std::size_t k = 0; k < 3; ++k) {
            const QPointF from = corners[k] - feeler.at, to = corners[(k + 1) % 3] - feeler.at;
            const double a = QPointF::dotProduct(from, along), b = QPointF::dotProduct(to, along);
            if (a == b || (a > 0) == (b > 0)) continue;
            const double out = QPointF::dotProduct(from + (to - from) * (a / (a - b)), feeler.out);
            reached(feeler, out, feeler.at + out * feeler.out);
        }
    }
    void touch_corner(Feeler& feeler, const std::array<QPointF, 3>& corners) const {
        for (const QPointF& corner : corners) {
            const QPointF way = corner - feeler.at;
            if (QPointF::dotProduct(way, way) > reach_mm_ * reach_mm_) continue;
            if (!feeler.at_vertex) feeler.furthest = -std::numeric_limits<double>::infinity();
            feeler.at_vertex = true;
            reached(feeler, QPointF::dotProduct(way, feeler.out), corner);
        }
    }
    void reached(Feeler& feeler, double out, const QPointF& at) const {
        if (std::abs(out) > reach_mm_ || out <= feeler.furthest) return;
        feeler.furthest = out;
        feeler.outermost = at;
    }

    double reach_mm_, square_;
    QPointF origin_;
    int columns_ = 1, rows_ = 1;
    std::vector<std::vector<Feeler*>> squares_;
};

void drop_repeated(QPolygonF& boundary) {
    const auto same = [](const QPointF& a, const QPointF& b) {
        return std::hypot(a.x() - b.x(), a.y() - b.y()) < 1e-4;
    };
    boundary.erase(std::unique(boundary.begin(), boundary.end(), same), boundary.end());
    while (boundary.size() > 1 && same(boundary.front(), boundary.back())) boundary.removeLast();
}

}  // namespace

void snap_to_outline(std::vector<QPolygonF>& boundaries, const Mesh& mesh, const Projection& projection,
                     double reach_mm) {
    auto feelers = feelers_of(boundaries);
    if (feelers.empty()) return;
    FeelerGrid grid(feelers, reach_mm);
    std::vector<QPointF> flat;
    for (std::size_t v = 0; v < mesh.positions.size(); v += 3) {
        const auto at = [&](std::size_t axis) { return static_cast<double>(mesh.positions[v + axis]); };
        flat.push_back(projection.flat({at(0), at(1), at(2)}));
    }
    for (std::size_t t = 0; t + 2 < mesh.indices.size(); t += 3)
        grid.meet({flat[mesh.indices[t]], flat[mesh.indices[t + 1]], flat[mesh.indices[t + 2]]});
    for (const Feeler& feeler : feelers)
        if (std::isfinite(feeler.furthest)) *feeler.point = feeler.outermost;
    for (QPolygonF& boundary : boundaries) drop_repeated(boundary);
}

}  // namespace roundwright::render
