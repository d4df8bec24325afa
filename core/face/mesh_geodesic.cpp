#include "core/face/mesh_geodesic.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numeric>
#include <utility>

#include <queue>

#include "core/face/geodesic_strip.h"

namespace roundwright {
namespace {

Vec3 vertex_of(const Mesh& mesh, std::size_t v) {
    const auto at = [&](std::size_t axis) { return static_cast<double>(mesh.positions[3 * v + axis]); };
    return {at(0), at(1), at(2)};
}

double angle(const Vec3& a, const Vec3& b) { return std::atan2(a.cross(b).norm(), a.dot(b)); }

/// Ericson, Real-Time Collision Detection (2005), 5.1.5: by the regions of the triangle's corners and edges.
Vec3 nearest_in_triangle(const Vec3& p, const Vec3& a, const Vec3& b, const Vec3& c) {
    const Vec3 ab = b - a, ac = c - a, ap = p - a, bp = p - b, cp = p - c;
    const double d1 = ab.dot(ap), d2 = ac.dot(ap), d3 = ab.dot(bp), d4 = ac.dot(bp), d5 = ab.dot(cp),
                 d6 = ac.dot(cp);
    if (d1 <= 0 && d2 <= 0) return a;
    if (d3 >= 0 && d4 <= d3) return b;
    if (d6 >= 0 && d5 <= d6) return c;
    const double vc = d1 * d4 - d3 * d2, vb = d5 * d2 - d1 * d6, va = d3 * d6 - d5 * d4;
    if (vc <= 0 && d1 >= 0 && d3 <= 0) return a + d1 / (d1 - d3) * ab;
    if (vb <= 0 && d2 >= 0 && d6 <= 0) return a + d2 / (d2 - d6) * ac;
    if (va <= 0 && d4 >= d3 && d5 >= d6) return b + (d4 - d3) / (d4 - d3 + d5 - d6) * (c - b);
    return a + (vb * ab + vc * ac) / (va + vb + vc);
}

}  // namespace

MeshGeodesics::MeshGeodesics(const Mesh& mesh) {
    weld(mesh);
    join_edges();
    measure_angles();
}

void MeshGeodesics::weld(const Mesh& mesh) {
    std::vector<std::uint32_t> order(mesh.vertex_count()), number(mesh.vertex_count());
    std::iota(order.begin(), order.end(), 0U);
    const auto place = [&](std::uint32_t v) {
        return std::array{mesh.positions[3 * v], mesh.positions[3 * v + 1], mesh.positions[3 * v + 2]};
    };
    std::ranges::sort(order, {}, place);
    for (std::size_t k = 0; k < order.size(); ++k) {
        if (k == 0 || place(order[k]) != place(order[k - 1])) points_.push_back(vertex_of(mesh, order[k]));
        number[order[k]] = static_cast<std::uint32_t>(points_.size()) - 1;
    }
    for (std::size_t t = 0; t + 2 < mesh.indices.size(); t += 3) {
        const std::array face{number[mesh.indices[t]], number[mesh.indices[t + 1]],
                              number[mesh.indices[t + 2]]};
        if (face[0] != face[1] && face[1] != face[2] && face[2] != face[0]) faces_.push_back(face);
    }
}

void MeshGeodesics::join_edges() {
    twins_.assign(3 * faces_.size(), none);
    std::vector<HalfEdge> order(twins_.size());
    std::iota(order.begin(), order.end(), 0U);
    const auto key = [&](HalfEdge h) {
        const std::uint64_t from = vertex(h), to = vertex(next(h));
        return std::min(from, to) << 32U | std::max(from, to);
    };
    std::ranges::sort(order, {}, key);
    for (std::size_t k = 0; k + 1 < order.size(); ++k) {
        if (key(order[k]) != key(order[k + 1]) || vertex(order[k]) == vertex(order[k + 1])) continue;
        twins_[order[k]] = order[k + 1];
        twins_[order[k + 1]] = order[k];
        ++k;
    }
}

void MeshGeodesics::measure_angles() {
    angles_.assign(points_.size(), 0);
    for (HalfEdge h = 0; h < twins_.size(); ++h) {
        const HalfEdge after = next(h), before = next(after);
        angles_[vertex(h)] += angle(corner(after) - corner(h), corner(before) - corner(h));
    }
    for (HalfEdge h = 0; h < twins_.size(); ++h)
        if (twins_[h] == none)
            angles_[vertex(h)] = angles_[vertex(next(h))] = std::numeric_limits<double>::infinity();
}

MeshGeodesics::OnMesh MeshGeodesics::nearest(const Vec3& point) const {
    OnMesh found;
    double least = std::numeric_limits<double>::infinity();
    for (std::uint32_t f = 0; f < faces_.size(); ++f) {
        const Vec3 at = nearest_in_triangle(point, corner(3 * f), corner(3 * f + 1), corner(3 * f + 2));
        const double squared = (at - point).squaredNorm();
        if (squared < least) {
            least = squared;
            found = {f, at};
        }
    }
    return found;
}

/// Dijkstra over a few points on every edge, led towards the goal by the straight distance to it (A*).
class MeshGeodesics::Search {
  public:
    Search(const MeshGeodesics& mesh, const OnMesh& from, const OnMesh& to)
        : mesh_(mesh),
          from_(from),
          to_(to),
          cost_(points_on_edge * mesh.twins_.size(), std::numeric_limits<double>::infinity()),
          came_(cost_.size(), none) {}

    /// Half-edges crossed; empty where there is no way.
    std::vector<HalfEdge> run() {
        for (HalfEdge k = 0; k < 3; ++k) leave(3 * from_.face + k, from_.point, 0, none);
        while (!open_.empty()) {
            const auto [least, node] = open_.top();
            open_.pop();
            const Vec3 here = place(node);
            if (least > cost_[node] + (here - to_.point).norm()) continue;
            const HalfEdge entered = mesh_.twins_[node / points_on_edge];
            if (entered / 3 == to_.face) return way_to(node);
            leave(next(entered), here, cost_[node], node);
            leave(next(next(entered)), here, cost_[node], node);
        }
        return {};
    }

  private:
    using Node = std::uint32_t;  ///< a point of a half-edge, from the face that is left across it
    static constexpr Node points_on_edge = 3;

    [[nodiscard]] Vec3 place(Node node) const {
        const HalfEdge h = node / points_on_edge;
        const double share = (node % points_on_edge + 0.5) / points_on_edge;
        return (1 - share) * mesh_.corner(h) + share * mesh_.corner(next(h));
    }
    void leave(HalfEdge h, const Vec3& here, double cost, Node before) {
        if (mesh_.twins_[h] == none) return;
        for (Node node = points_on_edge * h; node < points_on_edge * (h + 1); ++node) {
            const Vec3 there = place(node);
            const double way = cost + (there - here).norm();
            if (way >= cost_[node]) continue;
            cost_[node] = way;
            came_[node] = before;
            open_.emplace(way + (there - to_.point).norm(), node);
        }
    }
    [[nodiscard]] std::vector<HalfEdge> way_to(Node node) const {
        std::vector<HalfEdge> crossed;
        for (; node != none; node = came_[node]) crossed.push_back(node / points_on_edge);
        std::ranges::reverse(crossed);
        return crossed;
    }

    using Entry = std::pair<double, Node>;  ///< what the way over it costs at least
    const MeshGeodesics& mesh_;
    OnMesh from_, to_;
    std::vector<double> cost_;
    std::vector<Node> came_;
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open_;
};

double MeshGeodesics::distance_mm(const Vec3& from, const Vec3& to) const {
    if (empty()) return 0;
    const OnMesh a = nearest(from), b = nearest(to);
    const double straight = (a.point - b.point).norm();
    if (a.face == b.face) return straight;
    auto crossed = Search(*this, a, b).run();
    if (crossed.empty()) return straight;
    return GeodesicStrip(*this, a.point, b.point, std::move(crossed)).straightened();
}

}  // namespace roundwright
