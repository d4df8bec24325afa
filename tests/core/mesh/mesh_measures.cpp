#include "tests/core/mesh/mesh_measures.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <vector>

namespace roundwright::test {
namespace {

Vec3 vertex(const Mesh& mesh, std::uint32_t i) {
    return Vec3(mesh.positions[3u * i], mesh.positions[3u * i + 1], mesh.positions[3u * i + 2]);
}

double angle_between(const Vec3& u, const Vec3& v) { return std::atan2(u.cross(v).norm(), u.dot(v)); }

/// Every edge as its two ends and the direction it is used in, so that equal edges sort together.
void measure_edges(const Mesh& mesh, MeshMeasures& found) {
    std::vector<std::uint64_t> uses;
    uses.reserve(mesh.indices.size());
    for (std::size_t t = 0; t < mesh.indices.size(); t += 3) {
        for (std::size_t k = 0; k < 3; ++k) {
            const std::uint64_t a = mesh.indices[t + k], b = mesh.indices[t + (k + 1) % 3];
            uses.push_back((std::min(a, b) << 33) | (std::max(a, b) << 1) | (a < b ? 1 : 0));
        }
    }
    std::sort(uses.begin(), uses.end());
    long edges = 0;
    for (std::size_t k = 0; k < uses.size(); ++edges) {
        std::size_t last = k;
        while (last < uses.size() && uses[last] >> 1 == uses[k] >> 1) ++last;
        if (last - k != 2 || uses[k] == uses[k + 1]) ++found.odd_edges;
        k = last;
    }
    std::vector<bool> used(mesh.vertex_count(), false);
    for (const auto index : mesh.indices) used[index] = true;
    found.euler_characteristic = static_cast<long>(std::count(used.begin(), used.end(), true)) - edges +
                                 static_cast<long>(mesh.triangle_count());
}

}  // namespace

MeshMeasures measure(const Mesh& mesh) {
    MeshMeasures found;
    const auto is_finite = [](float x) { return std::isfinite(x); };
    found.finite = std::all_of(mesh.positions.begin(), mesh.positions.end(), is_finite) &&
                   std::all_of(mesh.normals.begin(), mesh.normals.end(), is_finite) &&
                   std::all_of(mesh.colours.begin(), mesh.colours.end(), is_finite);
    for (std::size_t v = 0; v < mesh.normals.size(); v += 3)
        if (std::abs(std::hypot(mesh.normals[v], mesh.normals[v + 1], mesh.normals[v + 2]) - 1) > 1e-4)
            found.unit_normals = false;
    std::vector<double> deficit(mesh.vertex_count(), 0);
    for (std::size_t t = 0; t < mesh.indices.size(); t += 3) {
        const std::uint32_t i[3] = {mesh.indices[t], mesh.indices[t + 1], mesh.indices[t + 2]};
        const Vec3 p[3] = {vertex(mesh, i[0]), vertex(mesh, i[1]), vertex(mesh, i[2])};
        found.volume_mm3 += p[0].dot(p[1].cross(p[2])) / 6;
        const double area = (p[1] - p[0]).cross(p[2] - p[0]).norm() / 2;
        found.area_mm2 += area;
        found.flat_triangles += area > 0 ? 0 : 1;
        for (int k = 0; k < 3; ++k)
            deficit[i[k]] += angle_between(p[(k + 1) % 3] - p[k], p[(k + 2) % 3] - p[k]);
    }
    for (const double angles : deficit)
        if (angles > 0) found.total_curvature += 2 * std::numbers::pi - angles;
    measure_edges(mesh, found);
    return found;
}

}  // namespace roundwright::test
