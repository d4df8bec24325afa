#include "render/raster/pile.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <cstdint>

#include "core/mesh/revolve.h"
#include "render/raster/stitch_size.h"

namespace roundwright::render {
namespace {

constexpr std::size_t most_fibres_a_stitch = 44;
constexpr double fibre_width = 0.045, shortest = 0.2, longest = 0.42;  // in stitches
constexpr double root_light = 0.93, tip_light = 1.05;

/// A share of 0..1 that looks like chance, the same for the same stitch every time (the finaliser of
/// MurmurHash3).
double chance(std::uint32_t stitch, std::uint32_t draw) {
    std::uint32_t x = stitch * 0x9E3779B9U + draw * 0x85EBCA6BU;
    x = (x ^ (x >> 16)) * 0x85EBCA6BU;
    x = (x ^ (x >> 13)) * 0xC2B2AE35U;
    return (x ^ (x >> 16)) / 4294967296.0;
}

void add_vertex(Mesh& mesh, const Vec3& place, const Vec3& normal, Colour colour, double light) {
    for (const double x : {place.x(), place.y(), place.z()}) mesh.positions.push_back(static_cast<float>(x));
    for (const double x : {normal.x(), normal.y(), normal.z()}) mesh.normals.push_back(static_cast<float>(x));
    for (const double channel : {colour.red, colour.green, colour.blue})
        mesh.colours.push_back(static_cast<float>(std::min(1.0, light * channel / 255)));
}

/// Fibre `draw` of a stitch: from a point of it outwards and, on the whole, down, at random aslant.
void add_fibre(Mesh& mesh, const StitchPatch& patch, std::uint32_t stitch, std::uint32_t draw,
               double stitch_mm) {
    const auto share = [&](std::uint32_t k) { return chance(stitch, 8 * draw + k); };
    const Vec3 below = patch.corners[1] + share(0) * (patch.corners[0] - patch.corners[1]);
    const Vec3 above = patch.corners[2] + share(0) * (patch.corners[3] - patch.corners[2]);
    const Vec3 aside = (patch.corners[2] - patch.corners[3]).normalized();
    const Vec3 down = patch.normal.cross(aside).normalized();
    const Vec3 root = below + share(1) * (above - below) - 0.03 * stitch_mm * patch.normal;
    const double length = (shortest + (longest - shortest) * share(2)) * stitch_mm;
    const Vec3 lean = (1.5 * share(3) - 0.75) * aside + (0.2 - 1.1 * share(4)) * down;
    const Vec3 way = (patch.normal * (0.45 + 0.5 * share(5)) + lean).normalized();
    const double turn = 3.14159265 * share(6);
    const Vec3 half = 0.5 * fibre_width * stitch_mm * (std::cos(turn) * aside + std::sin(turn) * down);
    const double light = 0.92 + 0.16 * share(7);
    const auto first = static_cast<std::uint32_t>(mesh.vertex_count());
    add_vertex(mesh, root - half, patch.normal, patch.colour, light * root_light);
    add_vertex(mesh, root + half, patch.normal, patch.colour, light * root_light);
    add_vertex(mesh, root + length * way, (patch.normal + 0.5 * lean).normalized(), patch.colour,
               light * tip_light);
    for (std::uint32_t k = 0; k < 3; ++k) mesh.indices.push_back(first + k);
    mesh.stitch_of_triangle.push_back(static_cast<std::int32_t>(stitch));
}

bool has_room(const StitchPatch& patch) {
    return patch.brushed && (patch.corners[3] - patch.corners[2]).squaredNorm() > 1e-12 &&
           (patch.corners[0] - patch.corners[3]).squaredNorm() > 1e-12;
}

}  // namespace

Mesh pile_mesh(const StitchSurface& surface) {
    Mesh mesh;
    const auto brushed =
        static_cast<std::size_t>(std::count_if(surface.stitches.begin(), surface.stitches.end(), has_room));
    if (brushed == 0) return mesh;
    const std::size_t taken = std::min(most_picture_triangles, surface.mesh.triangle_count());
    const std::size_t fibres = std::min(most_fibres_a_stitch, (most_picture_triangles - taken) / brushed);
    const double stitch_mm = stitch_size_mm(surface);
    for (std::uint32_t s = 0; s < surface.stitches.size(); ++s) {
        if (!has_room(surface.stitches[s])) continue;
        for (std::uint32_t k = 0; k < fibres; ++k) add_fibre(mesh, surface.stitches[s], s, k, stitch_mm);
    }
    return mesh;
}

}  // namespace roundwright::render
