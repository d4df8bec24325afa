#include "core/mesh/files/write_stl.h"

#include <Eigen/Geometry>
#include <array>
#include <cstdint>

#include "core/mesh/files/little_endian.h"

namespace roundwright {
namespace {

constexpr std::size_t header_bytes = 80;
constexpr std::size_t bytes_a_triangle = 50;

Vec3 corner(const NamedMesh& named, std::uint32_t index) {
    const float* p = &named.mesh->positions[3u * index];
    return Vec3(p[0], p[1], p[2]) + named.place;
}

void append_z_up(std::string& bytes, const Vec3& point) {
    for (const double x : {point.x(), -point.z(), point.y()})
        append_little_endian(bytes, static_cast<float>(x));
}

void append_triangle(std::string& bytes, const std::array<Vec3, 3>& corners) {
    const Vec3 across = (corners[1] - corners[0]).cross(corners[2] - corners[0]);
    append_z_up(bytes, across.norm() > 0 ? Vec3(across.normalized()) : Vec3(Vec3::Zero()));
    for (const auto& point : corners) append_z_up(bytes, point);
    append_little_endian(bytes, std::uint16_t{0});
}

}  // namespace

std::string write_stl(std::span<const NamedMesh> meshes) {
    std::size_t triangles = 0;
    for (const auto& named : meshes) triangles += named.mesh->triangle_count();
    // The header must not begin with "solid", by which readers know the text form.
    std::string bytes = "binary, millimetres, z up";
    bytes.resize(header_bytes, ' ');
    bytes.reserve(header_bytes + 4 + bytes_a_triangle * triangles);
    append_little_endian(bytes, static_cast<std::uint32_t>(triangles));
    for (const auto& named : meshes) {
        const auto& indices = named.mesh->indices;
        for (std::size_t t = 0; t + 2 < indices.size(); t += 3)
            append_triangle(bytes, {corner(named, indices[t]), corner(named, indices[t + 1]),
                                    corner(named, indices[t + 2])});
    }
    return bytes;
}

}  // namespace roundwright
