#include "core/mesh/surface_blend.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace roundwright {
namespace {

/// A point turned about the upright axis until it stands where another does. Two shapes may lean their
/// columns differently, and a slide that undid that would twist the fabric.
Vec3 turned_to(const Vec3& point, const Vec3& other) {
    constexpr double on_the_axis_mm = 0.1;
    const double radius = std::hypot(point.x(), point.z()), there = std::hypot(other.x(), other.z());
    if (radius < on_the_axis_mm || there < on_the_axis_mm) return point;
    return {other.x() / there * radius, point.y(), other.z() / there * radius};
}

/// `u` across and `v` up, from the lower left corner.
Vec3 bilinear(const std::array<Vec3, 4>& corners, double u, double v) {
    return (1 - v) * ((1 - u) * corners[0] + u * corners[1]) + v * (u * corners[2] + (1 - u) * corners[3]);
}

double on_stitch(const Mesh& mesh, std::size_t entry) {
    return entry < mesh.places.size() ? std::min(1.0, mesh.places[entry] / Mesh::place_units) : 0.5;
}

/// Means over the triangles that meet at each vertex.
class VertexMeans {
  public:
    explicit VertexMeans(std::size_t vertices) : sum_(vertices, Vec3::Zero()), count_(vertices, 0) {}

    void add(std::size_t vertex, const Vec3& value) {
        sum_[vertex] += value;
        ++count_[vertex];
    }
    [[nodiscard]] bool has(std::size_t vertex) const { return count_[vertex] > 0; }
    [[nodiscard]] Vec3 of(std::size_t vertex) const {
        return has(vertex) ? Vec3(sum_[vertex] / count_[vertex]) : Vec3(Vec3::Zero());
    }

  private:
    std::vector<Vec3> sum_;
    std::vector<int> count_;
};

/// The point that a fan closes on goes with the vertices around it.
void add_points_of_fans(const Mesh& mesh, VertexMeans& means) {
    VertexMeans points(mesh.vertex_count());
    for (std::size_t i = 0; i < mesh.indices.size(); ++i) {
        const std::size_t first = i - i % 3;
        if (means.has(mesh.indices[i])) continue;
        for (std::size_t k = first; k < first + 3; ++k)
            if (means.has(mesh.indices[k])) points.add(mesh.indices[i], means.of(mesh.indices[k]));
    }
    for (std::size_t vertex = 0; vertex < mesh.vertex_count(); ++vertex)
        if (points.has(vertex)) means.add(vertex, points.of(vertex));
}

}  // namespace

std::optional<SurfaceBlend> SurfaceBlend::between(const StitchSurface& from,
                                                  std::shared_ptr<const StitchSurface> to) {
    if (!to || from.first_stitch_of_round != to->first_stitch_of_round || to->stitches.empty() ||
        from.stitches.size() != to->stitches.size())
        return std::nullopt;
    SurfaceBlend blend;
    blend.back_.resize(to->stitches.size());
    for (std::size_t i = 0; i < blend.back_.size(); ++i)
        for (std::size_t k = 0; k < 4; ++k)
            blend.back_[i][k] = turned_to(from.stitches[i].corners[k], to->stitches[i].corners[k]) -
                                to->stitches[i].corners[k];
    blend.to_ = std::move(to);
    blend.move_vertices();
    return blend;
}

void SurfaceBlend::move_vertices() {
    const Mesh& mesh = to_->mesh;
    VertexMeans means(mesh.vertex_count());
    for (std::size_t i = 0; i < mesh.indices.size(); ++i) {
        const std::int32_t stitch = mesh.stitch_of_triangle[i / 3];
        if (stitch < 0) continue;
        means.add(mesh.indices[i], bilinear(back_[static_cast<std::size_t>(stitch)], on_stitch(mesh, 2 * i),
                                            on_stitch(mesh, 2 * i + 1)));
    }
    add_points_of_fans(mesh, means);
    vertex_back_.resize(mesh.positions.size());
    for (std::size_t vertex = 0; vertex < mesh.vertex_count(); ++vertex) {
        const Vec3 back = means.of(vertex);
        for (std::size_t k = 0; k < 3; ++k)
            vertex_back_[3 * vertex + k] = static_cast<float>(back[static_cast<Eigen::Index>(k)]);
    }
}

std::shared_ptr<const StitchSurface> SurfaceBlend::at(double share) const {
    if (share >= 1) return to_;
    const double left = 1 - std::max(0.0, share);
    auto surface = std::make_shared<StitchSurface>(*to_);
    for (std::size_t i = 0; i < back_.size(); ++i)
        for (std::size_t k = 0; k < 4; ++k) surface->stitches[i].corners[k] += left * back_[i][k];
    for (std::size_t i = 0; i < vertex_back_.size(); ++i)
        surface->mesh.positions[i] += static_cast<float>(left) * vertex_back_[i];
    return surface;
}

double SurfaceBlend::farthest_mm() const {
    double farthest = 0;
    for (std::size_t i = 0; i + 2 < vertex_back_.size(); i += 3)
        farthest = std::max(farthest, std::hypot(double(vertex_back_[i]), double(vertex_back_[i + 1]),
                                                 double(vertex_back_[i + 2])));
    return farthest;
}

}  // namespace roundwright
