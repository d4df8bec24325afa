#include "core/shape/fabric/measure_stitches.h"

#include <Eigen/Dense>
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/shape/fabric/cells_start.h"

namespace roundwright {
namespace {

using std::numbers::pi;

constexpr int directions = 16;

class Measurer {
  public:
    explicit Measurer(const SolvedStitches& stitches) : cells_(stitches.cells), shape_(stitches.shape) {}

    PieceMeasures measure() const {
        PieceMeasures measures;
        measures.fidelity = Fidelity::every_stitch;
        measures.termination = shape_.termination;
        measures.area_stretch = shape_.area_stretch;
        measures.surface_mm2 = surface();
        measures.volume_mm3 = cells_.rows ? 0 : std::max(0.0, enclosed_mm3(cells_, shape_.nodes));
        const auto [low, high] =
            std::ranges::minmax(shape_.nodes, {}, [](const Vec3& node) { return node.y(); });
        measures.height_mm = high.y() - low.y();
        for (std::size_t edge = 0; edge < cells_.edges.size(); ++edge)
            measures.loops.push_back(loop(edge, low.y()));
        const std::size_t widest = widest_loop(measures);
        const double half = half_stitch(widest);
        measures.width_mm = across(shape_.nodes, 0, half);
        measures.depth_mm = across(shape_.nodes, pi / 2, half);
        return measures;
    }

  private:
    [[nodiscard]] const Vec3& at(std::int32_t node) const {
        return shape_.nodes[static_cast<std::size_t>(node)];
    }

    [[nodiscard]] double half_stitch(std::size_t edge) const {
        return cells_.rows ? 0 : pi / static_cast<double>(cells_.edges[edge].nodes.size() - 1);
    }

    /// Seen in the directions about `angle`, from x towards z.
    static double across(const std::vector<Vec3>& nodes, double angle, double half) {
        double sum = 0;
        for (int k = 0; k < directions; ++k) {
            const double seen = angle + half * ((2.0 * k + 1) / directions - 1);
            const Vec3 way(std::cos(seen), 0, std::sin(seen));
            double least = std::numeric_limits<double>::infinity(), most = -least;
            for (const Vec3& node : nodes) {
                least = std::min(least, node.dot(way));
                most = std::max(most, node.dot(way));
            }
            sum += (most - least) / directions;
        }
        return sum;
    }

    [[nodiscard]] double surface() const {
        double sum = 0;
        for (const FabricTriangle& t : cells_.problem.triangles)
            sum += (at(t.nodes[1]) - at(t.nodes[0])).cross(at(t.nodes[2]) - at(t.nodes[0])).norm() / 2;
        return sum;
    }

    [[nodiscard]] LoopMeasures loop(std::size_t edge, double lowest) const {
        const CellEdge& line = cells_.edges[edge];
        LoopMeasures loop;
        std::vector<Vec3> nodes;
        double length = 0, height = 0;
        for (std::size_t k = 0; k < line.nodes.size(); ++k) {
            nodes.push_back(at(line.nodes[k].node));
            if (k == 0) continue;
            length += (nodes[k] - nodes[k - 1]).norm();
            height += (line.nodes[k].at - line.nodes[k - 1].at) * (nodes[k] + nodes[k - 1]).y() / 2;
        }
        loop.radius_mm = length / (2 * pi);
        loop.height_mm = height / line.loops - lowest;
        loop.width_mm = across(nodes, 0, half_stitch(edge));
        loop.depth_mm = across(nodes, pi / 2, half_stitch(edge));
        if (!line.is_point()) loop.course_stretch = length / (line.loops * line.loop_width_mm) - 1;
        if (edge > 0) loop.wale_stretch = wale_stretch(edge - 1);
        return loop;
    }

    [[nodiscard]] Vec3 on(const CellEdge& line, double along) const {
        auto above = std::ranges::upper_bound(line.nodes, along, {}, &EdgeNode::at);
        above = std::clamp(above, line.nodes.begin() + 1, line.nodes.end() - 1);
        const double t = (along - (above - 1)->at) / (above->at - (above - 1)->at);
        return (1 - t) * at((above - 1)->node) + t * at(above->node);
    }

    /// Of the stitches' middle lines, by their own heights.
    [[nodiscard]] double wale_stretch(std::size_t round) const {
        const auto& cells = cells_.rounds[round].cells;
        double length = 0, relaxed = 0;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            if (cells[c].carried) continue;
            const Vec3 foot = on(cells_.edges[round], (cells[c].below_first + cells[c].below_last) / 2);
            length += (on(cells_.edges[round + 1], static_cast<double>(c) + 0.5) - foot).norm();
            relaxed += height_at_rest(round, c);
        }
        return relaxed > 0 ? length / relaxed - 1 : 0;
    }

    /// From its area and the widths of its two lines.
    [[nodiscard]] double height_at_rest(std::size_t round, std::size_t c) const {
        double area = 0;
        for (auto t = cells_.first_triangle[round][c]; t < cells_.first_triangle[round][c + 1]; ++t) {
            const auto& rest = cells_.problem.triangles[static_cast<std::size_t>(t)].rest;
            const Vec2 a = rest[1] - rest[0], b = rest[2] - rest[0];
            area += (a.x() * b.y() - a.y() * b.x()) / 2;
        }
        const LaidStitch& cell = cells_.rounds[round].cells[c];
        const double below = cells_.edges[round].is_point()
                                 ? 0
                                 : (cell.below_last - cell.below_first) * cells_.edges[round].loop_width_mm;
        return 2 * area / (below + cells_.edges[round + 1].loop_width_mm);
    }

    const StitchCells& cells_;
    const FabricShape& shape_;
};

/// Length of the convex hull's outline (A. M. Andrew, Inf. Process. Lett. 9 (1979) 216-219).
double hull_length(std::vector<Vec2> points) {
    std::ranges::sort(
        points, [](const Vec2& a, const Vec2& b) { return a.x() != b.x() ? a.x() < b.x() : a.y() < b.y(); });
    const auto half = [](auto first, auto last) {
        std::vector<Vec2> chain;
        for (; first != last; ++first) {
            const auto turns_in = [&](const Vec2& a, const Vec2& b) {
                const Vec2 ab = b - a, bc = *first - b;
                return ab.x() * bc.y() - ab.y() * bc.x() <= 0;
            };
            while (chain.size() > 1 && turns_in(chain[chain.size() - 2], chain.back())) chain.pop_back();
            chain.push_back(*first);
        }
        double length = 0;
        for (std::size_t k = 1; k < chain.size(); ++k) length += (chain[k] - chain[k - 1]).norm();
        return length;
    };
    return half(points.begin(), points.end()) + half(points.rbegin(), points.rend());
}

/// An edge's nodes in the axes of their own spread, the least of it first.
Eigen::MatrixXd in_own_axes(const SolvedStitches& stitches, const CellEdge& edge) {
    const auto count = static_cast<Eigen::Index>(edge.nodes.size());
    Eigen::MatrixXd places(3, count);
    for (Eigen::Index k = 0; k < count; ++k) {
        const std::int32_t node = edge.nodes[static_cast<std::size_t>(k)].node;
        places.col(k) = stitches.shape.nodes[static_cast<std::size_t>(node)];
    }
    const Vec3 middle = places.rowwise().mean();
    places.colwise() -= middle;
    const Eigen::Matrix3d moments = places * places.transpose();
    return Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d>(moments).eigenvectors().transpose() * places;
}

}  // namespace

PieceMeasures measure_stitches(const SolvedStitches& stitches) { return Measurer(stitches).measure(); }

std::vector<double> drawn_tight_radii_mm(const SolvedStitches& stitches) {
    std::vector<double> radii;
    for (const CellEdge& edge : stitches.cells.edges) {
        const Eigen::MatrixXd places = in_own_axes(stitches, edge);
        std::vector<Vec2> flat;
        for (Eigen::Index k = 0; k < places.cols(); ++k) flat.emplace_back(places(1, k), places(2, k));
        radii.push_back(hull_length(std::move(flat)) / (2 * pi));
    }
    return radii;
}

EdgeWaves edge_waves(const SolvedStitches& stitches, std::size_t edge) {
    constexpr double no_wave = 0.1;
    const Eigen::VectorXd out = in_own_axes(stitches, stitches.cells.edges[edge]).row(0);
    EdgeWaves found;
    found.height_mm = out.maxCoeff() - out.minCoeff();
    int side = 0, first = 0, crossings = 0;
    for (const double here : out) {
        if (std::abs(here) < no_wave * found.height_mm) continue;
        const int now = here > 0 ? 1 : -1;
        if (side == 0) first = now;
        crossings += side != 0 && now != side;
        side = now;
    }
    crossings += side != first;
    found.waves = crossings / 2;
    return found;
}

}  // namespace roundwright
