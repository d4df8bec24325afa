#include "core/mesh/stitched_surface.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

namespace roundwright {
namespace {

constexpr double drawn_in = 1.0 / 24;
/// In stitch widths: where a round is lower, its relief is flatter.
constexpr double relief_height = 0.25;

std::size_t index(std::int32_t node) { return static_cast<std::size_t>(node); }

Vec3 unit(const Vec3& way, const Vec3& otherwise) {
    const double length = way.norm();
    return length > 1e-12 ? Vec3(way / length) : otherwise;
}

/// Every node with its normal, the mean of its triangles' by their areas.
std::vector<FabricPoint> points_of(const SolvedStitches& stitches, bool turned_over) {
    const auto& nodes = stitches.shape.nodes;
    std::vector<FabricPoint> points(nodes.size());
    double highest = 0;
    for (const Vec3& node : nodes) highest = std::max(highest, node.y());
    for (std::size_t k = 0; k < nodes.size(); ++k) {
        const Vec3& node = nodes[k];
        points[k] = {turned_over ? Vec3(-node.x(), highest - node.y(), node.z()) : node, Vec3::Zero()};
    }
    for (const FabricTriangle& triangle : stitches.cells.problem.triangles) {
        const auto& [a, b, c] = triangle.nodes;
        const Vec3 way = (points[index(b)].place - points[index(a)].place)
                             .cross(points[index(c)].place - points[index(a)].place);
        for (const std::int32_t node : triangle.nodes) points[index(node)].normal += way;
    }
    for (FabricPoint& point : points) point.normal = unit(point.normal, Vec3::UnitY());
    return points;
}

/// A node's neighbours along the line of loops that it lies on.
struct Beside {
    std::int32_t before = -1, after = -1;
};

/// Of node `k` of an edge; a closed edge goes on at its other end, a spiral on the edge beside it.
Beside beside(const StitchCells& cells, std::size_t edge, std::size_t k) {
    const auto& nodes = cells.edges[edge].nodes;
    const bool closed = nodes.front().node == nodes.back().node;
    const std::size_t last = nodes.size() - 1;
    Beside found;
    if (k > 0)
        found.before = nodes[k - 1].node;
    else if (closed)
        found.before = nodes[last - 1].node;
    else if (edge > 0 && cells.edges[edge - 1].nodes.back().node == nodes.front().node)
        found.before = cells.edges[edge - 1].nodes[cells.edges[edge - 1].nodes.size() - 2].node;
    if (k < last)
        found.after = nodes[k + 1].node;
    else if (closed)
        found.after = nodes[1].node;
    else if (edge + 1 < cells.edges.size() && cells.edges[edge + 1].nodes.front().node == nodes.back().node)
        found.after = cells.edges[edge + 1].nodes[1].node;
    return found;
}

Vec3 draw_in(const Vec3& before, const Vec3& at, const Vec3& after) {
    const double a = (at - before).norm(), b = (after - at).norm();
    if (!(a > 1e-9) || !(b > 1e-9)) return Vec3::Zero();
    const Vec3 curvature = 2 / (a + b) * ((after - at) / b - (at - before) / a);
    return drawn_in * (a * a + b * b) / 2 * curvature;
}

/// Draws every node in by the first edge that it lies on.
void draw_in_all(const StitchCells& cells, std::vector<FabricPoint>& points) {
    std::vector<Vec3> moved(points.size(), Vec3::Zero());
    std::vector<bool> done(points.size(), false);
    for (std::size_t edge = 0; edge < cells.edges.size(); ++edge) {
        const auto& nodes = cells.edges[edge].nodes;
        if (cells.edges[edge].is_point() || (edge == 0 && cells.around_chain)) continue;
        if (edge + 1 == cells.edges.size() && cells.sewn) continue;
        for (std::size_t k = 0; k < nodes.size(); ++k) {
            const Beside near = beside(cells, edge, k);
            if (done[index(nodes[k].node)] || near.before < 0 || near.after < 0) continue;
            done[index(nodes[k].node)] = true;
            moved[index(nodes[k].node)] =
                draw_in(points[index(near.before)].place, points[index(nodes[k].node)].place,
                        points[index(near.after)].place);
        }
    }
    for (std::size_t k = 0; k < points.size(); ++k) points[k].place += moved[k];
}

/// Half the sum of the principal curvatures at each node: over its sides, the mean of the turn of the normal
/// by the way.
std::vector<double> curvatures_of(const StitchCells& cells, const std::vector<FabricPoint>& points) {
    std::vector<double> sum(points.size(), 0), times(points.size(), 0);
    for (const FabricTriangle& triangle : cells.problem.triangles)
        for (std::size_t k = 0; k < 3; ++k) {
            const std::size_t a = index(triangle.nodes[k]), b = index(triangle.nodes[(k + 1) % 3]);
            const Vec3 way = points[b].place - points[a].place;
            if (!(way.squaredNorm() > 1e-12)) continue;
            const double bulge = (points[b].normal - points[a].normal).dot(way) / way.squaredNorm();
            for (const std::size_t node : {a, b}) {
                sum[node] += bulge;
                ++times[node];
            }
        }
    for (std::size_t k = 0; k < sum.size(); ++k)
        if (times[k] > 0) sum[k] /= times[k];
    return sum;
}

}  // namespace

StitchedSurface::StitchedSurface(const SolvedStitches& stitches, bool turned_over)
    : sheet_(stitches.cells.rows), sewn_(stitches.cells.sewn) {
    const StitchCells& cells = stitches.cells;
    std::vector<FabricPoint> points = points_of(stitches, turned_over);
    const std::vector<double> curvatures = curvatures_of(cells, points);
    draw_in_all(cells, points);
    const bool folded = cells.around_chain && !cells.rows;
    ends_ = {cells.pole_below.has_value(), folded, cells.pole_above || cells.sewn};
    if (cells.rows) ends_.rounds = RoundEnds::nowhere;
    if (cells.spiral) ends_.rounds = RoundEnds::in_the_next;
    const std::vector<double>& turns = cells.turns;
    for (std::size_t edge = 0; edge < cells.edges.size(); ++edge) {
        set_line(stitches, edge, points);
        Line& line = lines_.back();
        line.turn = turns[edge];
        for (const EdgeNode& node : cells.edges[edge].nodes)
            line.curvature +=
                curvatures[index(node.node)] / static_cast<double>(cells.edges[edge].nodes.size());
    }
    const auto middle = [&](const CellEdge& edge) {
        FabricPoint mean{Vec3::Zero(), Vec3::Zero()};
        for (const EdgeNode& node : edge.nodes) {
            mean.place += points[index(node.node)].place / static_cast<double>(edge.nodes.size());
            mean.normal += points[index(node.node)].normal;
        }
        mean.normal = unit(mean.normal, Vec3::UnitY());
        return mean;
    };
    if (folded) pole_below_ = middle(cells.edges.front());
    if (cells.pole_above)
        pole_above_ = points[index(*cells.pole_above)];
    else if (cells.sewn)
        pole_above_ = middle(cells.edges.back());
}

void StitchedSurface::set_line(const SolvedStitches& stitches, std::size_t edge,
                               const std::vector<FabricPoint>& points) {
    const CellEdge& from = stitches.cells.edges[edge];
    Line& line = lines_.emplace_back();
    line.loops = from.loops;
    for (std::size_t k = 0; k < from.nodes.size(); ++k) {
        Knot& knot = line.knots.emplace_back();
        knot.at = from.nodes[k].at;
        knot.point = points[index(from.nodes[k].node)];
        if (from.is_point()) continue;
        const Beside near = beside(stitches.cells, edge, k);
        const Vec3& here = knot.point.place;
        const double before = k > 0 ? knot.at - from.nodes[k - 1].at : 1;
        const double after = k + 1 < from.nodes.size() ? from.nodes[k + 1].at - knot.at : before;
        const Vec3 in = near.before >= 0 ? Vec3(here - points[index(near.before)].place) : Vec3::Zero();
        const Vec3 out = near.after >= 0 ? Vec3(points[index(near.after)].place - here) : Vec3::Zero();
        // Catmull and Rom's tangent for knots that are not evenly spaced; at a loose end the side that is
        // there.
        const double a = near.before >= 0 ? before : 0, b = near.after >= 0 ? after : 0;
        if (a > 0 && b > 0)
            knot.along = (b * in / a + a * out / b) / (a + b);
        else if (a + b > 0)
            knot.along = (in + out) / (a + b);
    }
    measure(line, sheet_);
}

void StitchedSurface::measure(Line& line, bool sheet) {
    Vec3 middle = Vec3::Zero();
    double length = 0;
    for (std::size_t k = 0; k + 1 < line.knots.size(); ++k) {
        const Knot &from = line.knots[k], &to = line.knots[k + 1];
        length += (to.point.place - from.point.place).norm();
        middle += (to.at - from.at) / line.loops * (from.point.place + to.point.place) / 2;
    }
    double outward = 0;
    for (const Knot& knot : line.knots)
        outward += knot.point.normal.dot(unit(knot.point.place - middle, Vec3::Zero())) /
                   static_cast<double>(line.knots.size());
    line.girth_radius_mm = length / (2 * std::numbers::pi);
    line.room_mm = !sheet && outward > 1e-3 && length > 0 ? line.girth_radius_mm / 2 / outward
                                                          : std::numeric_limits<double>::infinity();
}

FabricPoint StitchedSurface::on(const Line& line, double along) {
    auto above = std::ranges::upper_bound(line.knots, along, {}, &Knot::at);
    above = std::clamp(above, line.knots.begin() + 1, line.knots.end() - 1);
    const Knot &from = *(above - 1), &to = *above;
    const double way = to.at - from.at, t = (along - from.at) / way, rest = 1 - t;
    FabricPoint found;
    found.place = rest * rest * (1 + 2 * t) * from.point.place + t * t * (3 - 2 * t) * to.point.place +
                  way * t * rest * (rest * from.along - t * to.along);
    found.normal = unit(rest * from.point.normal + t * to.point.normal, to.point.normal);
    return found;
}

double StitchedSurface::girth_radius_mm(std::size_t round, double up) const {
    return (1 - up) * lines_[round].girth_radius_mm + up * lines_[round + 1].girth_radius_mm;
}

void StitchedSurface::place_row(const CellRow& row, const double* lifts_mm, Vec3* places,
                                Vec3* normals) const {
    const Line &below = lines_[row.round], &above = lines_[row.round + 1];
    // Where loops are left alone there is no height for relief, and in a seam both sides meet.
    const double full_relief =
        std::max(1e-9, relief_height * 2 * std::numbers::pi * above.girth_radius_mm / above.loops);
    const bool at_seam = sewn_ && row.round + 2 == lines_.size();
    for (std::size_t q = 0; q < row.columns; ++q) {
        const double share = static_cast<double>(q) / static_cast<double>(row.columns);
        const FabricPoint low = on(below, row.below_first + share * (row.below_last - row.below_first));
        const FabricPoint high = on(above, row.above_first + share * (row.above_last - row.above_first));
        const Vec3 normal = unit((1 - row.up) * low.normal + row.up * high.normal, high.normal);
        const double room = std::min(1.0, (high.place - low.place).norm() / full_relief);
        const double lift = lifts_mm[q] * room * (at_seam ? 1 - row.up : 1);
        places[q] = (1 - row.up) * low.place + row.up * high.place + lift * normal;
        if (normals) normals[q] = normal;
    }
}

FabricPoint StitchedSurface::on_edge(std::size_t edge, double loops_along, double lift_mm,
                                     std::uint32_t) const {
    FabricPoint found = on(lines_[edge], loops_along);
    found.place += lift_mm * found.normal;
    return found;
}

std::optional<FabricPoint> StitchedSurface::pole_below(double lift_mm) const {
    if (!pole_below_) return {};
    return FabricPoint{pole_below_->place + lift_mm * pole_below_->normal, pole_below_->normal};
}

std::optional<FabricPoint> StitchedSurface::pole_above(double lift_mm) const {
    if (!pole_above_) return {};
    return FabricPoint{pole_above_->place + lift_mm * pole_above_->normal, pole_above_->normal};
}

double StitchedSurface::loops_at(std::size_t edge, double cell, double cells) const {
    const Line& line = lines_[edge];
    if (sheet_) return cell / cells * line.loops;
    const double turns = cell / cells - line.turn;
    return (turns - std::floor(turns)) * line.loops;
}

std::unique_ptr<FabricGeometry> StitchedSurface::coarser(const std::vector<std::size_t>& kept,
                                                         const std::vector<double>& cells) const {
    // Larger cells than stitches: the edges of a spiral are closed.
    std::unique_ptr<StitchedSurface> coarse(new StitchedSurface);
    coarse->ends_ = ends_;
    if (!sheet_) coarse->ends_.rounds = RoundEnds::at_their_start;
    coarse->pole_below_ = pole_below_;
    coarse->pole_above_ = pole_above_;
    coarse->sheet_ = sheet_;
    coarse->sewn_ = sewn_;
    for (std::size_t k = 0; k < kept.size(); ++k) {
        Line& line = coarse->lines_.emplace_back(lines_[kept[k]]);
        line.knots.clear();
        line.loops = cells[k];
        line.turn = 0;
        for (double at = 0; at <= cells[k]; ++at) {
            const double along =
                at < cells[k] || sheet_ ? loops_at(kept[k], at, cells[k]) : loops_at(kept[k], 0, cells[k]);
            line.knots.push_back({at, on(lines_[kept[k]], along), Vec3::Zero()});
        }
        for (std::size_t j = 0; j < line.knots.size(); ++j) {
            const std::size_t last = line.knots.size() - 1;
            const std::size_t before = j > 0 ? j - 1 : (sheet_ ? 0 : last - 1);
            const std::size_t after = j < last ? j + 1 : (sheet_ ? last : 1);
            const double way = sheet_ && (j == 0 || j == last) ? 1 : 2;
            line.knots[j].along = (line.knots[after].point.place - line.knots[before].point.place) / way;
        }
    }
    return coarse;
}

}  // namespace roundwright
