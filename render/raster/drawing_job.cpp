#include "render/raster/drawing_job.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "render/raster/shading.h"

namespace roundwright::render {

namespace {

using Eigen::Vector3f;

/// By table: colours come in 256 steps.
std::vector<Vector3f> linear_colours(const Mesh& mesh) {
    constexpr int steps = 1023;
    static const std::vector<float> table = [] {
        std::vector<float> values(steps + 1);
        for (int i = 0; i <= steps; ++i) values[i] = to_linear(static_cast<float>(i) / steps);
        return values;
    }();
    std::vector<Vector3f> out(mesh.colours.size() / 3);
    const auto at = [](float v) {
        return table[static_cast<std::size_t>(std::clamp(v, 0.0F, 1.0F) * steps + 0.5F)];
    };
    for (std::size_t i = 0; i < out.size(); ++i) {
        out[i] = {at(mesh.colours[3 * i]), at(mesh.colours[3 * i + 1]), at(mesh.colours[3 * i + 2])};
    }
    return out;
}

/// Whether a triangle has nothing in a rectangle, by the edges that have all of it on their outer side; a
/// sample more on every side, for the rounding.
class Misses {
  public:
    Misses(const ScreenPoint& a, const ScreenPoint& b, const ScreenPoint& c) {
        const double area = across(a, b) * down(a, c) - across(a, c) * down(a, b);
        const double turn = area < 0 ? -1 : 1;
        edges_ = {Edge{a, turn * across(a, b), turn * down(a, b)},
                  Edge{b, turn * across(b, c), turn * down(b, c)},
                  Edge{c, turn * across(c, a), turn * down(c, a)}};
    }

    [[nodiscard]] bool all_of(double left, double top, double side) const {
        constexpr double slack = 1;
        return std::ranges::any_of(edges_, [&](const Edge& edge) {
            const double x = (edge.down < 0 ? left + side + slack : left - slack) - edge.from.x;
            const double y = (edge.across > 0 ? top + side + slack : top - slack) - edge.from.y;
            return edge.across * y - edge.down * x < 0;
        });
    }

  private:
    struct Edge {
        ScreenPoint from{};
        double across = 0;
        double down = 0;
    };
    static double across(const ScreenPoint& from, const ScreenPoint& to) {
        return static_cast<double>(to.x) - static_cast<double>(from.x);
    }
    static double down(const ScreenPoint& from, const ScreenPoint& to) {
        return static_cast<double>(to.y) - static_cast<double>(from.y);
    }

    std::array<Edge, 3> edges_;
};

void put_in_bins(Bins& bins, const ScreenMesh& mesh, const DrawingJob& job, std::uint32_t first_id) {
    const auto tile_samples = static_cast<float>(tile_pixels * job.samples);
    const auto tile = [tile_samples](float sample, int tiles) {
        return std::clamp(static_cast<int>(sample / tile_samples), 0, tiles - 1);
    };
    const auto width = static_cast<float>(job.size.width() * job.samples);
    const auto height = static_cast<float>(job.size.height() * job.samples);
    mesh.for_each_triangle(
        [&](const ScreenPoint& a, const ScreenPoint& b, const ScreenPoint& c, std::uint32_t t) {
            const float left = std::min({a.x, b.x, c.x}), right = std::max({a.x, b.x, c.x});
            const float top = std::min({a.y, b.y, c.y}), bottom = std::max({a.y, b.y, c.y});
            if (right < 0 || bottom < 0 || left > width || top > height) return;
            const int first_row = tile(top, job.tiles_down), last_row = tile(bottom, job.tiles_down);
            const int first = tile(left, job.tiles_across), last = tile(right, job.tiles_across);
            const Misses misses(a, b, c);
            const bool aslant = last_row > first_row && last > first;
            const double side = tile_samples;
            for (int row = first_row; row <= last_row; ++row) {
                for (int column = first; column <= last; ++column) {
                    if (aslant && misses.all_of(column * side, row * side, side)) continue;
                    auto& bin = bins[static_cast<std::size_t>(row * job.tiles_across + column)];
                    if (bin.empty() || bin.back() != first_id + t) bin.push_back(first_id + t);
                }
            }
        });
}

bool is_fabric(const Mesh& mesh) {
    return mesh.places.size() == 6 * mesh.triangle_count() && !mesh.places.empty();
}

}  // namespace

Vector3f linear(const QColor& c) {
    return {to_linear(static_cast<float>(c.redF())), to_linear(static_cast<float>(c.greenF())),
            to_linear(static_cast<float>(c.blueF()))};
}

const DrawnMesh& DrawingJob::owner_of(std::uint32_t id) const {
    std::size_t i = meshes.size() - 1;
    while (i > 0 && meshes[i].first_id > id) --i;
    return meshes[i];
}

DrawingJob prepared_job(const SoftwareScene& scene, const Camera& camera, QSize size, int samples) {
    const ViewAxes axes = camera.axes();
    const auto tiles = [](int pixels) { return (pixels + tile_pixels - 1) / tile_pixels; };
    DrawingJob job{scene, camera, size, samples, tiles(size.width()), tiles(size.height()), {}, {}, {}, {},
                   {},    {},     {},   {}};
    job.ghost_colour = ghost_colour(scene.background);
    job.behind = scene.rim ? QColor(Qt::transparent) : scene.background;
    job.to_eye << axes.right.cast<float>().transpose(), axes.up.cast<float>().transpose(),
        axes.back.cast<float>().transpose();
    const int width = size.width() * samples, height = size.height() * samples;
    job.solid_bins.resize(static_cast<std::size_t>(job.tiles_across * job.tiles_down));
    job.ghost_bins.resize(job.solid_bins.size());
    std::uint32_t next = 0;
    for (const ShadedMesh& mesh : scene.meshes) {
        const bool fabric = is_fabric(*mesh.mesh);
        job.meshes.push_back({mesh, ScreenMesh(*mesh.mesh, camera, width, height, fabric),
                              linear_colours(*mesh.mesh), next, fabric});
        put_in_bins(job.solid_bins, job.meshes.back().screen, job, next);
        next += static_cast<std::uint32_t>(mesh.mesh->triangle_count());
        if (!fabric) continue;
        const auto pictures = face_pictures(*mesh.mesh);
        for (std::size_t face = 0; face < stitch_faces; ++face)
            if (pictures[face] != nullptr) job.faces[face] = pictures[face];
    }
    if (scene.ghost) {
        job.ghost.emplace_back(*scene.ghost, camera, width, height, false);
        put_in_bins(job.ghost_bins, job.ghost.back(), job, 0);
    }
    return job;
}

}  // namespace roundwright::render
