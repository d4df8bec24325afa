#include "app/assembly/overlap_marks.h"

#include <cmath>
#include <numbers>

#include "core/mesh/build_mesh.h"

namespace roundwright::app {
namespace {

using std::numbers::pi;

constexpr double bead_radius_mm = 1.5;
constexpr double bead_spacing_mm = 4.5;
constexpr double least_direction_mm = 0.5;

void add_bead(Mesh& mesh, const Vec3& middle, const Colour& colour) {
    constexpr std::uint32_t around = 10, along = 6;
    const auto first = static_cast<std::uint32_t>(mesh.vertex_count());
    for (std::uint32_t i = 0; i <= along; ++i) {
        for (std::uint32_t k = 0; k < around; ++k) {
            const double down = pi * i / along, turn = 2 * pi * k / around;
            const Vec3 normal(std::sin(down) * std::sin(turn), std::cos(down),
                              std::sin(down) * std::cos(turn));
            add_vertex(mesh, middle + bead_radius_mm * normal, normal, colour);
        }
    }
    for (std::uint32_t i = 0; i < along; ++i) {
        for (std::uint32_t k = 0; k < around; ++k) {
            const std::uint32_t a = first + i * around + k, b = first + i * around + (k + 1) % around;
            add_triangle(mesh, a, a + around, b + around);
            add_triangle(mesh, a, b + around, b);
        }
    }
}

}  // namespace

Mesh beads_mesh(const OverlapRegion& region, const Pose& in_picture, const Colour& colour) {
    Mesh mesh;
    for (const auto& line : region.lines)
        for (const Vec3& place : spaced_along(line, bead_spacing_mm))
            add_bead(mesh, in_picture * place, colour);
    return mesh;
}

Mesh layer_mesh(const std::vector<const OverlapRegion*>& regions, const Pose& in_picture) {
    Mesh all;
    for (const OverlapRegion* region : regions)
        append(all, placed_mesh(region->inside, PlacedForm(in_picture)));
    return all;
}

std::optional<double> direction_of(const OverlapRegion& region, const Pose& in_picture, const Vec3& middle) {
    Vec3 sum = Vec3::Zero();
    std::size_t points = 0;
    for (const auto& line : region.lines) {
        for (const Vec3& place : line) sum += in_picture * place;
        points += line.size();
    }
    if (points == 0) return std::nullopt;
    const Vec3 way = sum / static_cast<double>(points) - middle;
    if (std::hypot(way.x(), way.z()) < least_direction_mm) return 0;
    return std::atan2(way.x(), way.z()) * 180 / pi;
}

}  // namespace roundwright::app
