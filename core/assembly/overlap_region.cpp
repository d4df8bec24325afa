#include "core/assembly/overlap_region.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <optional>
#include <utility>

#include "core/assembly/held_solids.h"
#include "core/assembly/join_frames.h"
#include "core/mesh/build_mesh.h"
#include "core/mesh/ray_cast.h"

namespace roundwright {
namespace {

constexpr int samples_across = 22;
constexpr int halvings = 14;

Mesh mesh_of(const Solid& solid) {
    Mesh mesh;
    for (const Vec3& point : solid.points) add_vertex(mesh, point, Vec3::UnitY(), {});
    for (const auto& [a, b, c] : solid.triangles) add_triangle(mesh, a, b, c);
    return mesh;
}

/// Whether points are in a solid: what a ray from there meets first is met from within.
class Within {
  public:
    explicit Within(const Solid& solid) : caster_(mesh_of(solid)) {
        for (const Vec3& point : solid.points) {
            low_ = low_.cwiseMin(point);
            high_ = high_.cwiseMax(point);
        }
    }

    [[nodiscard]] bool operator()(const Vec3& point) const {
        if ((point - low_).minCoeff() < 0 || (high_ - point).minCoeff() < 0) return false;
        // Along no axis of a piece, so that it meets few edges.
        const auto hit = caster_.first_hit({point, Vec3(0.31, 0.87, 0.38)});
        return hit && !hit->from_outside;
    }
    [[nodiscard]] const Vec3& low() const { return low_; }
    [[nodiscard]] const Vec3& high() const { return high_; }

  private:
    RayCaster caster_;
    Vec3 low_ = Vec3::Constant(std::numeric_limits<double>::infinity());
    Vec3 high_ = -low_;
};

/// What two have in common as far from a point as leaves so much of it.
double distance_leaving(const Within& one, const Within& other, const Vec3& from, double volume_mm3) {
    const Vec3 low = one.low().cwiseMax(other.low());
    const Vec3 cell = (one.high().cwiseMin(other.high()) - low) / samples_across;
    std::vector<double> distances;
    for (int x = 0; x < samples_across; ++x)
        for (int y = 0; y < samples_across; ++y)
            for (int z = 0; z < samples_across; ++z) {
                const Vec3 point = low + cell.cwiseProduct(Vec3(x + 0.5, y + 0.5, z + 0.5));
                if (one(point) && other(point)) distances.push_back((point - from).norm());
            }
    const double kept = volume_mm3 / std::max(cell.prod(), 1e-12);
    if (kept >= static_cast<double>(distances.size())) return 0;
    std::ranges::sort(distances, std::ranges::greater{});
    return distances[static_cast<std::size_t>(std::max(0.0, kept))];
}

/// Cuts what lies in the region out of a surface.
class Cutter {
  public:
    Cutter(const Within& other, const Vec3* from, double nearest)
        : other_(other), from_(from), nearest_(nearest) {}

    void cut(const Solid& solid) {
        std::vector<bool> in;
        for (const Vec3& point : solid.points) in.push_back(keeps(point));
        for (const auto& triangle : solid.triangles) cut(solid, in, triangle);
    }
    [[nodiscard]] Mesh take_mesh() { return std::move(mesh_); }
    [[nodiscard]] std::vector<std::vector<Vec3>> lines() const;

  private:
    using Edge = std::pair<std::uint32_t, std::uint32_t>;
    struct Crossing {
        Edge edge;
        Vec3 place;
        bool through = false;  ///< of the other's surface, not of the distance
    };

    [[nodiscard]] bool far_enough(const Vec3& point) const {
        return from_ == nullptr || (point - *from_).norm() >= nearest_;
    }
    [[nodiscard]] bool keeps(const Vec3& point) const { return far_enough(point) && other_(point); }

    Crossing crossing(const Solid& solid, std::uint32_t in, std::uint32_t out) const {
        Vec3 kept = solid.points[in], left = solid.points[out];
        for (int halving = 0; halving < halvings; ++halving) {
            const Vec3 middle = (kept + left) / 2;
            (keeps(middle) ? kept : left) = middle;
        }
        return {std::minmax(in, out), kept, far_enough(left)};
    }

    void cut(const Solid& solid, const std::vector<bool>& in, std::array<std::uint32_t, 3> corner) {
        const int count = in[corner[0]] + in[corner[1]] + in[corner[2]];
        if (count == 0) return;
        if (count == 3) return add(solid.points[corner[0]], solid.points[corner[1]], solid.points[corner[2]]);
        // The corner that is alone on its side comes first.
        while (in[corner[0]] == in[corner[1]] || in[corner[0]] == in[corner[2]])
            std::rotate(corner.begin(), corner.begin() + 1, corner.end());
        const bool alone = in[corner[0]];
        const auto between = [&](std::uint32_t to) {
            return alone ? crossing(solid, corner[0], to) : crossing(solid, to, corner[0]);
        };
        const Crossing first = between(corner[1]), second = between(corner[2]);
        if (alone) {
            add(solid.points[corner[0]], first.place, second.place);
        } else {
            add(first.place, solid.points[corner[1]], solid.points[corner[2]]);
            add(first.place, solid.points[corner[2]], second.place);
        }
        if (first.through && second.through) join(first, second);
    }

    void add(const Vec3& a, const Vec3& b, const Vec3& c) {
        const Vec3 normal = (b - a).cross(c - a).stableNormalized();
        const auto first = static_cast<std::uint32_t>(mesh_.vertex_count());
        for (const Vec3& point : {a, b, c}) add_vertex(mesh_, point, normal, {});
        add_triangle(mesh_, first, first + 1, first + 2);
    }

    void join(const Crossing& first, const Crossing& second) {
        places_[first.edge] = first.place;
        places_[second.edge] = second.place;
        beside_[first.edge].push_back(second.edge);
        beside_[second.edge].push_back(first.edge);
    }

    const Within& other_;
    const Vec3* from_;
    double nearest_;
    Mesh mesh_;
    std::map<Edge, Vec3> places_;
    std::map<Edge, std::vector<Edge>> beside_;
};

/// From crossing to crossing, those with one neighbour first: they are the ends of lines that are not closed.
std::vector<std::vector<Vec3>> Cutter::lines() const {
    std::vector<std::vector<Vec3>> lines;
    std::map<Edge, bool> is_taken;
    const auto follow = [&](const Edge& start) {
        std::vector<Vec3> line;
        std::optional<Edge> at = start;
        Edge last = start;
        while (at) {
            is_taken[*at] = true;
            last = *at;
            line.push_back(places_.at(last));
            at.reset();
            for (const Edge& next : beside_.at(last))
                if (!at && !is_taken[next]) at = next;
        }
        const auto& ends = beside_.at(last);
        if (line.size() > 2 && std::ranges::find(ends, start) != ends.end()) line.push_back(line.front());
        lines.push_back(std::move(line));
    };
    for (const bool ends_only : {true, false})
        for (const auto& [edge, neighbours] : beside_)
            if (!is_taken[edge] && (!ends_only || neighbours.size() == 1)) follow(edge);
    return lines;
}

}  // namespace

OverlapRegion overlap_region(const Solid& one, const Solid& other, const Vec3* from, double volume_mm3) {
    OverlapRegion region;
    if (one.empty() || other.empty()) return region;
    const Within in_one(one), in_other(other);
    const double nearest = from ? distance_leaving(in_one, in_other, *from, volume_mm3) : 0;
    Cutter of_one(in_other, from, nearest), of_other(in_one, from, nearest);
    of_one.cut(one);
    of_other.cut(other);
    region.lines = of_one.lines();
    region.inside = of_one.take_mesh();
    append(region.inside, of_other.take_mesh());
    return region;
}

OverlapRegion overlap_region(const AssembledToy& toy, const PieceOverlap& overlap) {
    const HeldSolids held = held_solids(toy, overlap.one, overlap.other);
    std::optional<Vec3> seam;
    if (held.joined) {
        const PlacedPiece& placed = toy.placed.pieces[*held.joined];
        const auto end = frame_of_end(toy.solved[placed.solved], toy.toy.joins[*placed.join].end);
        if (end) seam = placed.pose * end->point;
    }
    OverlapRegion region = overlap_region(held.one, held.other, seam ? &*seam : nullptr, overlap.volume_mm3);
    region.one = overlap.one;
    region.other = overlap.other;
    return region;
}

std::vector<Vec3> spaced_along(const std::vector<Vec3>& line, double spacing_mm) {
    double length = 0;
    for (std::size_t k = 1; k < line.size(); ++k) length += (line[k] - line[k - 1]).norm();
    if (line.empty() || !(length > 0) || !(spacing_mm > 0)) return line;
    const bool closed = line.size() > 2 && line.front() == line.back();
    const int steps = static_cast<int>(std::ceil(length / spacing_mm));
    std::vector<Vec3> points;
    double before = 0;
    for (std::size_t k = 1; k < line.size(); ++k) {
        const Vec3 way = line[k] - line[k - 1];
        const double end = before + way.norm();
        while (static_cast<int>(points.size()) < steps) {
            const double at = length * static_cast<double>(points.size()) / steps;
            if (at > end) break;
            points.push_back(line[k - 1] + (end > before ? (at - before) / (end - before) : 0) * way);
        }
        before = end;
    }
    if (!closed) points.push_back(line.back());
    return points;
}

}  // namespace roundwright
