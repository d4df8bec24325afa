#include "render/scene/openness.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <cstdint>

namespace roundwright::render {

namespace {

using Vec3f = Eigen::Vector3f;

Vec3f vertex(const std::vector<float>& values, std::uint32_t i) {
    return {values[3 * i], values[3 * i + 1], values[3 * i + 2]};
}

template <typename Visit>
void for_each_edge(const Mesh& mesh, Visit visit) {
    for (std::size_t t = 0; t + 2 < mesh.indices.size(); t += 3) {
        for (std::size_t k = 0; k < 3; ++k) visit(mesh.indices[t + k], mesh.indices[t + (k + 1) % 3]);
    }
}

/// The mean of `value(from, to)` over the edges at each vertex, from both ends.
template <typename Value>
std::vector<float> mean_over_edges(const Mesh& mesh, Value value) {
    std::vector<float> sum(mesh.vertex_count(), 0);
    std::vector<float> count(mesh.vertex_count(), 0);
    for_each_edge(mesh, [&](std::uint32_t a, std::uint32_t b) {
        sum[a] += value(a, b);
        sum[b] += value(b, a);
        ++count[a];
        ++count[b];
    });
    for (std::size_t i = 0; i < sum.size(); ++i) sum[i] = count[i] > 0 ? sum[i] / count[i] : 0;
    return sum;
}

}  // namespace

std::vector<float> openness(const Mesh& mesh, double scale_mm) {
    const auto bend = mean_over_edges(mesh, [&mesh](std::uint32_t a, std::uint32_t b) {
        const Vec3f edge = vertex(mesh.positions, b) - vertex(mesh.positions, a);
        const float square = edge.squaredNorm();
        return square > 1e-12F ? vertex(mesh.normals, a).dot(edge) / square : 0.0F;
    });
    const auto around = mean_over_edges(mesh, [&bend](std::uint32_t, std::uint32_t b) { return bend[b]; });
    std::vector<float> open(bend.size());
    const auto scale = static_cast<float>(scale_mm);
    for (std::size_t i = 0; i < open.size(); ++i) {
        const float hollow = (0.5F * bend[i] + 0.5F * around[i]) * scale;
        open[i] = std::clamp(1 - 0.9F * hollow, 0.3F, 1.0F);
    }
    return open;
}

double stitch_size_mm(const StitchSurface& surface) {
    double sum = 0;
    for (const StitchPatch& patch : surface.stitches) {
        for (std::size_t k = 0; k < 4; ++k) sum += (patch.corners[(k + 1) % 4] - patch.corners[k]).norm();
    }
    if (sum > 0) return sum / (4.0 * static_cast<double>(surface.stitches.size()));
    if (surface.mesh.positions.empty()) return 1;
    const auto [low, high] =
        std::minmax_element(surface.mesh.positions.begin(), surface.mesh.positions.end());
    return std::max(1e-3, static_cast<double>(*high - *low) / 20);
}

}  // namespace roundwright::render
