#include "core/mesh/mean_surface.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace roundwright {
namespace {

using Row = std::vector<FabricPoint>;

/// A row of the surface; at a pole all of its points are one.
struct Level {
    Row points;
    bool is_pole = false;
    bool is_seam = false;  ///< its layers are sewn together: the pole beside it lies in its middle
};

bool is_around(const FabricPoint& pole, const Row& loop) {
    Vec3 middle = Vec3::Zero();
    for (const FabricPoint& point : loop) middle += point.place / static_cast<double>(loop.size());
    return (middle - pole.place).norm() < 1e-3;
}

std::vector<Level> levels_of(const MeanSurface& surface) {
    const std::size_t around = surface.loops.front().size();
    std::vector<Level> levels;
    if (surface.pole_below) levels.push_back({Row(around, *surface.pole_below), true});
    for (const Row& loop : surface.loops) levels.push_back({loop, false, false});
    if (surface.starts_in_a_point) levels.front().is_pole = true;
    if (surface.pole_above) {
        levels.back().is_seam = is_around(*surface.pole_above, surface.loops.back());
        levels.push_back({Row(around, *surface.pole_above), true});
    }
    return levels;
}

/// Tangent at the middle of three values that lets the curve overshoot neither neighbour. Source: F. N.
/// Fritsch and R. E. Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980) 238-246.
double monotone_tangent(double before, double at, double after) {
    const double left = at - before, right = after - at;
    if (left * right <= 0) return 0;
    const double mean = (left + right) / 2;
    return std::copysign(std::min(std::abs(mean), 3 * std::min(std::abs(left), std::abs(right))), mean);
}

/// Direction of the curve up the fabric at a level, by the number of the level.
Vec3 tangent(const std::vector<Level>& levels, std::size_t at, std::size_t k) {
    const auto place = [&](std::size_t level) { return levels[level].points[k].place; };
    if (at > 0 && at + 1 < levels.size()) {
        Vec3 found;
        for (int axis = 0; axis < 3; ++axis)
            found[axis] = monotone_tangent(place(at - 1)[axis], place(at)[axis], place(at + 1)[axis]);
        return found;
    }
    const Vec3 along = at == 0 ? Vec3(place(1) - place(0)) : Vec3(place(at) - place(at - 1));
    if (!levels[at].is_pole) return along;
    const Vec3 normal = levels[at].points[k].normal;
    return along - along.dot(normal) * normal;
}

void add_vertex(Mesh& mesh, const Vec3& place) {
    for (int axis = 0; axis < 3; ++axis) mesh.positions.push_back(static_cast<float>(place[axis]));
}

/// From one level to the next by a cubic Hermite curve.
Vec3 on_hermite(const std::vector<Level>& levels, std::size_t above, std::size_t k, double v) {
    const Vec3 from = levels[above - 1].points[k].place, to = levels[above].points[k].place;
    const double rest = 1 - v;
    return rest * rest * (1 + 2 * v) * from + v * v * (3 - 2 * v) * to +
           v * rest * (rest * tangent(levels, above - 1, k) - v * tangent(levels, above, k));
}

/// The same by the quadratic B-spline: around each level from the middle of the way before it to the middle
/// of the way after it, and straight at both ends.
Vec3 on_spline(const std::vector<Level>& levels, std::size_t above, std::size_t k, double v) {
    const auto place = [&](std::size_t level) { return levels[level].points[k].place; };
    const std::size_t level = v < 0.5 ? above - 1 : above;
    if (level == 0 || level + 1 == levels.size() || levels[level].is_seam)
        return (1 - v) * place(above - 1) + v * place(above);
    const double t = v < 0.5 ? v + 0.5 : v - 0.5, rest = 1 - t;
    const Vec3 before = (place(level - 1) + place(level)) / 2, after = (place(level) + place(level + 1)) / 2;
    return rest * rest * before + 2 * t * rest * place(level) + t * t * after;
}

/// Faces between the rows, anticlockwise from outside; work goes to the left.
void join_rows(Mesh& mesh, std::size_t around) {
    const std::size_t rows = mesh.vertex_count() / around;
    for (std::size_t row = 1; row < rows; ++row) {
        for (std::size_t k = 0; k < around; ++k) {
            const auto vertex = [&](std::size_t r, std::size_t at) {
                return static_cast<std::uint32_t>(r * around + at % around);
            };
            const auto b0 = vertex(row - 1, k), b1 = vertex(row - 1, k + 1);
            const auto t0 = vertex(row, k), t1 = vertex(row, k + 1);
            mesh.indices.insert(mesh.indices.end(), {b0, t0, b1, b1, t0, t1});
            mesh.stitch_of_triangle.insert(mesh.stitch_of_triangle.end(), 2, -1);
        }
    }
}

}  // namespace

MeanSurface mean_surface(const FabricGeometry& geometry, std::size_t around) {
    MeanSurface surface;
    for (std::size_t edge = 0; edge <= geometry.rounds(); ++edge) {
        auto& loop = surface.loops.emplace_back();
        for (std::size_t k = 0; k < around; ++k)
            loop.push_back(geometry.on_edge(
                edge, geometry.loops_at(edge, static_cast<double>(k), static_cast<double>(around))));
    }
    surface.pole_below = geometry.pole_below();
    surface.pole_above = geometry.pole_above();
    surface.starts_in_a_point = geometry.ends().point_below;
    surface.in_layers = geometry.is_layer(geometry.rounds());
    return surface;
}

Mesh smooth_mesh(const MeanSurface& surface, std::size_t steps) {
    Mesh mesh;
    if (surface.loops.empty()) return mesh;
    const auto levels = levels_of(surface);
    for (const FabricPoint& point : levels.front().points) add_vertex(mesh, point.place);
    const auto on_curve = surface.in_layers ? on_spline : on_hermite;
    const std::size_t around = levels.front().points.size();
    for (std::size_t above = 1; above < levels.size(); ++above)
        for (std::size_t step = 1; step <= steps; ++step)
            for (std::size_t k = 0; k < around; ++k)
                add_vertex(
                    mesh, on_curve(levels, above, k, static_cast<double>(step) / static_cast<double>(steps)));
    join_rows(mesh, around);
    return mesh;
}

}  // namespace roundwright
