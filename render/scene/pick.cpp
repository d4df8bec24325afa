#include "render/scene/pick.h"

#include <Eigen/Geometry>
#include <cmath>
#include <limits>

namespace roundwright::render {

namespace {

using Vec3f = Eigen::Vector3f;

Vec3f vertex(const std::vector<float>& values, std::uint32_t i) {
    return {values[3 * i], values[3 * i + 1], values[3 * i + 2]};
}

struct Crossing {
    double distance, v, w;  // v and w: shares of the second and third corner
};

std::optional<Crossing> cross(const ViewRay& ray, const Vec3& a, const Vec3& b, const Vec3& c) {
    const Vec3 side_b = b - a, side_c = c - a;
    const Vec3 p = ray.direction.cross(side_c);
    const double determinant = side_b.dot(p);
    if (std::abs(determinant) < 1e-14) return std::nullopt;
    const Vec3 from_a = ray.origin - a;
    const double v = from_a.dot(p) / determinant;
    if (v < 0 || v > 1) return std::nullopt;
    const Vec3 q = from_a.cross(side_b);
    const double w = ray.direction.dot(q) / determinant;
    if (w < 0 || v + w > 1) return std::nullopt;
    const double distance = side_c.dot(q) / determinant;
    if (distance <= 0) return std::nullopt;
    return Crossing{distance, v, w};
}

Vec3 normal_at(const Mesh& mesh, std::size_t triangle, const Crossing& at, const Vec3& ray_direction) {
    const std::uint32_t* corner = &mesh.indices[3 * triangle];
    Vec3 normal = (1 - at.v - at.w) * vertex(mesh.normals, corner[0]).cast<double>() +
                  at.v * vertex(mesh.normals, corner[1]).cast<double>() +
                  at.w * vertex(mesh.normals, corner[2]).cast<double>();
    if (normal.squaredNorm() < 1e-12) normal = -ray_direction;
    normal.normalize();
    return normal.dot(ray_direction) > 0 ? Vec3(-normal) : normal;
}

}  // namespace

std::optional<MeshHit> pick(const Mesh& mesh, const ViewRay& ray) {
    std::optional<Crossing> best;
    std::size_t best_triangle = 0;
    for (std::size_t t = 0; t < mesh.triangle_count(); ++t) {
        const std::uint32_t* corner = &mesh.indices[3 * t];
        const auto found = cross(ray, vertex(mesh.positions, corner[0]).cast<double>(),
                                 vertex(mesh.positions, corner[1]).cast<double>(),
                                 vertex(mesh.positions, corner[2]).cast<double>());
        if (!found || (best && best->distance <= found->distance)) continue;
        best = found;
        best_triangle = t;
    }
    if (!best) return std::nullopt;
    return MeshHit{best_triangle, best->distance, ray.origin + best->distance * ray.direction,
                   normal_at(mesh, best_triangle, *best, ray.direction)};
}

}  // namespace roundwright::render
