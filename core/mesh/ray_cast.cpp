#include "core/mesh/ray_cast.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace roundwright {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr std::uint32_t leaf_size = 4;
// A hair more than rounding can take from a share, so that neighbours overlap rather than leave a gap.
constexpr double edge_tolerance = 1e-12;

/// Spreads ten bits to every third place.
std::uint32_t spread(std::uint32_t x) {
    x = (x | (x << 16)) & 0x030000FFU;
    x = (x | (x << 8)) & 0x0300F00FU;
    x = (x | (x << 4)) & 0x030C30C3U;
    return (x | (x << 2)) & 0x09249249U;
}

struct Inverse {
    std::array<double, 3> origin;
    std::array<double, 3> over_direction;
};

/// Least t at which the ray is in the box, or infinity (the slabs test; a NaN from 0 * infinity counts as
/// in).
template <typename Box>
double enter(const Box& box, const Inverse& ray, double nearest) {
    double from = 0, to = nearest;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        const double a = (static_cast<double>(box.low[axis]) - ray.origin[axis]) * ray.over_direction[axis];
        const double b = (static_cast<double>(box.high[axis]) - ray.origin[axis]) * ray.over_direction[axis];
        from = std::max(from, std::min(a, b));
        to = std::min(to, std::max(a, b));
    }
    // Room for rounding: a box is never missed by a ray that meets a triangle on its side.
    return from <= to * (1 + 1e-12) + 1e-12 ? from : infinity;
}

/// A mesh as rays see it.
struct Triangles {
    const std::vector<float>& positions;
    const std::vector<float>& normals;
    const std::vector<std::uint32_t>& indices;
    const std::vector<std::int32_t>& stitch_of_triangle;

    [[nodiscard]] std::array<Vec3, 3> corners(std::uint32_t triangle) const {
        std::array<Vec3, 3> found;
        for (std::size_t k = 0; k < 3; ++k) {
            const float* p = &positions[3u * indices[3u * triangle + k]];
            found[k] = Vec3(p[0], p[1], p[2]);
        }
        return found;
    }
};

/// The nearest hit of a ray among the triangles tried.
class Nearest {
  public:
    Nearest(const Ray& ray, const Triangles& triangles) : ray_(ray), triangles_(triangles) {}

    [[nodiscard]] double t() const { return hit_.t; }
    void try_triangle(std::uint32_t triangle) {
        const auto hit = meet(ray_, triangles_.corners(triangle));
        if (!hit) return;
        if (hit->t < hit_.t || (hit->t == hit_.t && triangle < triangle_)) {
            hit_ = *hit;
            triangle_ = triangle;
        }
    }
    [[nodiscard]] std::optional<MeshHit> described() const {
        if (hit_.t == infinity) return {};
        MeshHit hit;
        hit.triangle = triangle_;
        hit.t = hit_.t;
        hit.point = ray_.origin + hit.t * ray_.direction;
        if (triangle_ < triangles_.stitch_of_triangle.size())
            hit.stitch = triangles_.stitch_of_triangle[triangle_];
        const auto triangle = triangles_.corners(triangle_);
        const Vec3 flat = (triangle[1] - triangle[0]).cross(triangle[2] - triangle[0]);
        hit.from_outside = flat.dot(ray_.direction) < 0;
        const Vec3 smooth = smooth_normal();
        hit.normal = smooth.norm() > 1e-9 ? smooth.normalized() : flat.normalized();
        return hit;
    }

  private:
    [[nodiscard]] Vec3 smooth_normal() const {
        const std::array<double, 3> share = {1 - hit_.u - hit_.v, hit_.u, hit_.v};
        Vec3 smooth = Vec3::Zero();
        for (std::size_t k = 0; k < 3 && triangles_.normals.size() == triangles_.positions.size(); ++k) {
            const float* n = &triangles_.normals[3u * triangles_.indices[3u * triangle_ + k]];
            smooth += share[k] * Vec3(n[0], n[1], n[2]);
        }
        return smooth;
    }

    const Ray& ray_;
    const Triangles& triangles_;
    RayHit hit_{infinity, 0, 0};
    std::uint32_t triangle_ = 0;
};

}  // namespace

std::optional<RayHit> meet(const Ray& ray, const std::array<Vec3, 3>& triangle) {
    const Vec3 second = triangle[1] - triangle[0], third = triangle[2] - triangle[0];
    const Vec3 p = ray.direction.cross(third);
    const double determinant = second.dot(p);
    if (determinant == 0) return {};
    const Vec3 from = ray.origin - triangle[0];
    RayHit hit;
    hit.u = from.dot(p) / determinant;
    if (!(hit.u >= -edge_tolerance && hit.u <= 1 + edge_tolerance)) return {};
    const Vec3 q = from.cross(second);
    hit.v = ray.direction.dot(q) / determinant;
    if (!(hit.v >= -edge_tolerance && hit.u + hit.v <= 1 + edge_tolerance)) return {};
    hit.t = third.dot(q) / determinant;
    if (!(hit.t > 0)) return {};
    return hit;
}

RayCaster::RayCaster(const Mesh& mesh)
    : positions_(mesh.positions),
      normals_(mesh.normals),
      indices_(mesh.indices),
      stitch_of_triangle_(mesh.stitch_of_triangle),
      order_(mesh.triangle_count()) {
    if (order_.empty()) return;
    sort_by_place();
    nodes_.reserve(order_.size());
    nodes_.emplace_back();
    build(0, 0, static_cast<std::uint32_t>(order_.size()));
}

RayCaster::Box RayCaster::box_of(std::uint32_t triangle) const {
    const float* a = &positions_[3u * indices_[3u * triangle]];
    const float* b = &positions_[3u * indices_[3u * triangle + 1]];
    const float* c = &positions_[3u * indices_[3u * triangle + 2]];
    Box box;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        box.low[axis] = std::min({a[axis], b[axis], c[axis]});
        box.high[axis] = std::max({a[axis], b[axis], c[axis]});
    }
    return box;
}

/// Morton order of the triangles' middles: neighbours in the order are neighbours in space.
void RayCaster::sort_by_place() {
    std::vector<std::array<float, 3>> middles(order_.size());
    std::array<float, 3> low, high;
    low.fill(std::numeric_limits<float>::max());
    high.fill(std::numeric_limits<float>::lowest());
    for (std::uint32_t t = 0; t < order_.size(); ++t) {
        const Box box = box_of(t);
        for (std::size_t axis = 0; axis < 3; ++axis) {
            middles[t][axis] = (box.low[axis] + box.high[axis]) / 2;
            low[axis] = std::min(low[axis], middles[t][axis]);
            high[axis] = std::max(high[axis], middles[t][axis]);
        }
    }
    const float size = std::max({high[0] - low[0], high[1] - low[1], high[2] - low[2]});
    const float scale = size > 0 ? 1023 / size : 0;
    std::vector<std::uint64_t> keys(order_.size());
    for (std::uint32_t t = 0; t < order_.size(); ++t) {
        std::uint32_t code = 0;
        for (std::size_t axis = 0; axis < 3; ++axis)
            code |= spread(static_cast<std::uint32_t>((middles[t][axis] - low[axis]) * scale)) << axis;
        keys[t] = (static_cast<std::uint64_t>(code) << 32) | t;
    }
    std::sort(keys.begin(), keys.end());
    std::transform(keys.begin(), keys.end(), order_.begin(),
                   [](std::uint64_t key) { return static_cast<std::uint32_t>(key); });
}

void RayCaster::build(std::uint32_t node, std::uint32_t first, std::uint32_t last) {
    if (last - first <= leaf_size) {
        Box box = box_of(order_[first]);
        for (std::uint32_t k = first + 1; k < last; ++k) {
            const Box other = box_of(order_[k]);
            for (std::size_t axis = 0; axis < 3; ++axis) {
                box.low[axis] = std::min(box.low[axis], other.low[axis]);
                box.high[axis] = std::max(box.high[axis], other.high[axis]);
            }
        }
        nodes_[node] = {box, first, last - first};
        return;
    }
    const auto children = static_cast<std::uint32_t>(nodes_.size());
    nodes_.resize(nodes_.size() + 2);
    const std::uint32_t middle = first + (last - first) / 2;
    build(children, first, middle);
    build(children + 1, middle, last);
    Box box = nodes_[children].box;
    const Box& other = nodes_[children + 1].box;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        box.low[axis] = std::min(box.low[axis], other.low[axis]);
        box.high[axis] = std::max(box.high[axis], other.high[axis]);
    }
    nodes_[node] = {box, children, 0};
}

std::optional<MeshHit> RayCaster::first_hit(const Ray& ray) const {
    if (nodes_.empty()) return {};
    const Triangles triangles{positions_, normals_, indices_, stitch_of_triangle_};
    Nearest nearest(ray, triangles);
    Inverse inverse;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        inverse.origin[axis] = ray.origin[static_cast<Eigen::Index>(axis)];
        inverse.over_direction[axis] = 1 / ray.direction[static_cast<Eigen::Index>(axis)];
    }
    // Halving keeps the tree below 33 levels, and each leaves one node waiting.
    std::array<std::uint32_t, 64> waiting;
    std::size_t many = 0;
    waiting[many++] = 0;
    while (many > 0) {
        const Node& node = nodes_[waiting[--many]];
        if (enter(node.box, inverse, nearest.t()) == infinity) continue;
        if (node.count > 0) {
            for (std::uint32_t k = 0; k < node.count; ++k) nearest.try_triangle(order_[node.first + k]);
            continue;
        }
        const double left = enter(nodes_[node.first].box, inverse, nearest.t());
        const double right = enter(nodes_[node.first + 1].box, inverse, nearest.t());
        const std::uint32_t nearer = left <= right ? node.first : node.first + 1;
        if (std::max(left, right) < infinity)
            waiting[many++] = nearer == node.first ? node.first + 1 : node.first;
        if (std::min(left, right) < infinity) waiting[many++] = nearer;
    }
    return nearest.described();
}

std::optional<MeshHit> first_hit_by_trying_all(const Mesh& mesh, const Ray& ray) {
    const Triangles triangles{mesh.positions, mesh.normals, mesh.indices, mesh.stitch_of_triangle};
    Nearest nearest(ray, triangles);
    for (std::uint32_t triangle = 0; triangle < mesh.triangle_count(); ++triangle)
        nearest.try_triangle(triangle);
    return nearest.described();
}

}  // namespace roundwright
