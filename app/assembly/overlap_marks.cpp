#include "app/assembly/overlap_marks.h"

#include <cmath>
#include <numbers>

namespace roundwright::app {
namespace {

using std::numbers::pi;

constexpr double bead_radius_mm = 1.5;
constexpr double bead_spacing_mm = 4.5;
constexpr double least_direction_mm = 0.5;

void add_vertex(Mesh& mesh, const Vec3& place, const Vec3& normal, const Colour& colour) {
    for (int axis = 0; axis < 3; ++axis) {
        mesh.positions.push_back(static_cast<float>(place[axis]));
        mesh.normals.push_back(static_cast<float>(normal[axis]));
    }
    for (const int channel : {colour.red, colour.green, colour.blue})
        mesh.colours.push_back(static_cast<float>(channel) / 255.0F);
}

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
            mesh.indices.insert(mesh.indices.end(), {a, a + around, b + around, a, b + around, b});
            mesh.stitch_of_triangle.insert(mesh.stitch_of_triangle.end(), 2, -1);
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
    for (const OverlapRegion* region : regions) {
        const Mesh placed = placed_mesh(region->inside, PlacedForm(in_picture));
        const auto first = static_cast<std::uint32_t>(all.vertex_count());
        all.positions.insert(all.positions.end(), placed.positions.begin(), placed.positions.end());
        all.normals.insert(all.normals.end(), placed.normals.begin(), placed.normals.end());
        all.colours.insert(all.colours.end(), placed.colours.begin(), placed.colours.end());
        for (const std::uint32_t index : placed.indices) all.indices.push_back(first + index);
        all.stitch_of_triangle.resize(all.triangle_count(), -1);
    }
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
