#include "core/face/thread_mesh.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

#include "core/mesh/build_mesh.h"

namespace roundwright {

namespace {

using std::numbers::pi;

/// How far the middle of a thread stands out of the surface.
constexpr double proud_mm = 0.6;

}  // namespace

std::vector<SurfacePoint> way_between(const SurfacePlace& from, const SurfacePlace& to,
                                      const FaceSurface& surface) {
    constexpr int steps = 16;
    std::vector<SurfacePoint> way;
    for (int k = 0; k <= steps; ++k) {
        const double share = static_cast<double>(k) / steps;
        way.push_back(surface.at({from.along_mm + share * (to.along_mm - from.along_mm),
                                  from.angle + share * (to.angle - from.angle)}));
    }
    return way;
}

Mesh thread_mesh(const std::vector<SurfacePoint>& way, double thickness_mm, const Colour& colour) {
    constexpr int sides = 8;
    Mesh mesh;
    for (std::size_t k = 0; k < way.size(); ++k) {
        const Vec3 ahead = way[std::min(k + 1, way.size() - 1)].point - way[k == 0 ? 0 : k - 1].point;
        const Vec3 out = way[k].normal;
        Vec3 across = ahead.cross(out);
        if (across.norm() > 0) across.normalize();
        const double tip = k == 0 || k + 1 == way.size() ? 0.35 : 1;
        for (int side = 0; side < sides; ++side) {
            const double angle = 2 * pi * side / sides;
            const Vec3 direction = std::cos(angle) * across + std::sin(angle) * out;
            const Vec3 centre = way[k].point + out * proud_mm;
            add_vertex(mesh, centre + direction * (thickness_mm / 2 * tip), direction, colour);
        }
    }
    const auto index = [](std::size_t k, int side) {
        return static_cast<std::uint32_t>(k * sides + static_cast<std::size_t>(side % sides));
    };
    for (std::size_t k = 0; k + 1 < way.size(); ++k) {
        for (int side = 0; side < sides; ++side) {
            add_triangle(mesh, index(k, side), index(k + 1, side + 1), index(k, side + 1));
            add_triangle(mesh, index(k, side), index(k + 1, side), index(k + 1, side + 1));
        }
    }
    for (int side = 1; side + 1 < sides; ++side) {
        add_triangle(mesh, index(0, 0), index(0, side), index(0, side + 1));
        add_triangle(mesh, index(way.size() - 1, 0), index(way.size() - 1, side + 1),
                     index(way.size() - 1, side));
    }
    return mesh;
}

}  // namespace roundwright
