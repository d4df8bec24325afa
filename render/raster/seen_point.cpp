#include "render/raster/seen_point.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>

#include "render/raster/corner_vertices.h"
#include "render/raster/shading.h"

namespace roundwright::render {

namespace {

using Eigen::Vector3f;

Vector3f corner(const std::vector<float>& values, std::uint32_t i) {
    return {values[3 * i], values[3 * i + 1], values[3 * i + 2]};
}

/// The shares of a triangle's corners at the point where the eye's ray meets its plane.
Vector3f shares_at(const std::array<Vector3f, 3>& p, const Vector3f& ray) {
    const Vector3f side_b = p[1] - p[0], side_c = p[2] - p[0];
    const Vector3f h = ray.cross(side_c);
    const float determinant = side_b.dot(h);
    if (std::abs(determinant) < 1e-20F) return Vector3f::Constant(1.0F / 3);
    const float b = std::clamp(-p[0].dot(h) / determinant, 0.0F, 1.0F);
    const float c = std::clamp(ray.dot((-p[0]).cross(side_b)) / determinant, 0.0F, 1 - b);
    return {1 - b - c, b, c};
}

/// Through a point of the picture, in pixels.
Vector3f ray_at(const DrawingJob& job, float x, float y) {
    const auto w = static_cast<float>(job.size.width()), h = static_cast<float>(job.size.height());
    return {(2 * x / w - 1) * static_cast<float>(job.camera.half_width()),
            (1 - 2 * y / h) * static_cast<float>(job.camera.half_height()), -1};
}

/// How much `lit` changes across one pixel: the length of its gradient over the triangle's plane, seen at the
/// triangle's depth.
float lit_step(const std::array<Vector3f, 3>& p, const std::array<float, 3>& lit, float pixel_mm) {
    if (lit[0] == lit[1] && lit[1] == lit[2]) return 0;
    const float depth = -(p[0].z() + p[1].z() + p[2].z()) / 3;
    const auto flat = [depth](const Vector3f& v) -> Eigen::Vector2f {
        return Eigen::Vector2f(v.x() / -v.z(), v.y() / -v.z()) * depth;
    };
    const Eigen::Vector2f b = flat(p[1]) - flat(p[0]), c = flat(p[2]) - flat(p[0]);
    const float area = b.x() * c.y() - b.y() * c.x();
    if (std::abs(area) < 1e-12F) return 0;
    const float db = lit[1] - lit[0], dc = lit[2] - lit[0];
    const Eigen::Vector2f gradient((db * c.y() - dc * b.y()) / area, (dc * b.x() - db * c.x()) / area);
    return gradient.norm() * pixel_mm;
}

/// Sets what the triangle's face shows at shares of its corners `p`. The gradient of a value f over a
/// triangle with sides b, c and n = b x c is (df_b (c x n) + df_c (n x b)) / n.n.
void add_fabric(ShadedPoint& point, const DrawingJob& job, const Mesh& mesh, std::uint32_t triangle,
                const std::array<Vector3f, 3>& p, const Vector3f& share, const ShadingSetup& setup) {
    const std::uint16_t* at = &mesh.places[6 * static_cast<std::size_t>(triangle)];
    constexpr auto unit = static_cast<float>(1 / Mesh::place_units);
    const auto u = [at](std::size_t k) { return unit * static_cast<float>(at[2 * k]); };
    const auto v = [at](std::size_t k) { return unit * static_cast<float>(at[2 * k + 1]); };
    const auto level = [&](const Vector3f& side) -> Vector3f {
        return side - point.normal * point.normal.dot(side);
    };
    const Vector3f b = level(p[1] - p[0]), c = level(p[2] - p[0]), plane = b.cross(c);
    const float area = std::max(plane.squaredNorm(), 1e-20F);
    const Vector3f along_b = c.cross(plane) / area, along_c = plane.cross(b) / area;
    point.across = (u(1) - u(0)) * along_b + (u(2) - u(0)) * along_c;
    point.up = (v(1) - v(0)) * along_b + (v(2) - v(0)) * along_c;
    const float facing = std::max(-point.normal.dot(point.position.normalized()), 0.0F);
    point.fabric = job.faces[mesh.faces[triangle]]->at(share[0] * u(0) + share[1] * u(1) + share[2] * u(2),
                                                       share[0] * v(0) + share[1] * v(1) + share[2] * v(2),
                                                       fabric_level(-point.position.z(), facing, setup));
}

}  // namespace

Vector3f colour_at(const DrawingJob& job, std::uint32_t id, float x, float y) {
    const DrawnMesh& owner = job.owner_of(id);
    const Mesh& mesh = *owner.source.mesh;
    const std::uint32_t triangle = id - owner.first_id;
    const std::uint32_t* index = &mesh.indices[3 * static_cast<std::size_t>(triangle)];
    const auto& eye = owner.screen.eye_positions();
    const std::array<Vector3f, 3> p = {eye[index[0]], eye[index[1]], eye[index[2]]};
    const Vector3f share = shares_at(p, ray_at(job, x, y));
    ShadedPoint point;
    Vector3f normal = Vector3f::Zero();
    point.position = point.colour = normal;
    std::array<float, 3> lit{};
    for (int k = 0; k < 3; ++k) {
        const std::uint32_t i = index[k];
        point.position += share[k] * p[static_cast<std::size_t>(k)];
        if (!owner.fabric) point.colour += share[k] * owner.colours[i];
        normal += share[k] * corner(mesh.normals, i);
        if (owner.source.lit) lit[static_cast<std::size_t>(k)] = (*owner.source.lit)[i];
    }
    if (owner.fabric) point.colour = owner.colours[colour_vertex(mesh, triangle)];
    const bool away = (p[1] - p[0]).cross(p[2] - p[0]).dot(point.position) > 0;
    point.inside = away && !values_of(owner.source.finish).two_sided;
    point.normal = (job.to_eye * normal).normalized() * (point.inside ? -1.0F : 1.0F);
    const ShadingSetup setup{owner.source.finish, job.scene.any_lit && owner.source.lit != nullptr,
                             static_cast<float>(job.scene.stitch_mm), job.pixel_angle()};
    if (owner.fabric) add_fabric(point, job, mesh, triangle, p, share, setup);
    if (setup.any_lit) {
        point.lit = share[0] * lit[0] + share[1] * lit[1] + share[2] * lit[2];
        point.lit_step = lit_step(p, lit, -point.position.z() * setup.pixel_angle);
    }
    return shade(point, setup);
}

float veil_opacity(const DrawingJob& job, std::uint32_t triangle, float x, float y, bool behind) {
    const std::uint32_t* index = &job.scene.ghost->indices[3 * static_cast<std::size_t>(triangle)];
    const auto& eye = job.ghost.front().eye_positions();
    const std::array<Vector3f, 3> p = {eye[index[0]], eye[index[1]], eye[index[2]]};
    const Vector3f ray = ray_at(job, x, y);
    const Vector3f share = shares_at(p, ray);
    Vector3f normal = Vector3f::Zero();
    for (int k = 0; k < 3; ++k) normal += share[k] * corner(job.scene.ghost->normals, index[k]);
    return ghost_opacity(std::abs((job.to_eye * normal).normalized().dot(ray.normalized())), behind);
}

}  // namespace roundwright::render
