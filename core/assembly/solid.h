#pragma once

#include <array>
#include <cstdint>
#include <limits>
#include <vector>

#include "core/base/vec.h"
#include "core/mesh/fabric_geometry.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright {

/// A closed body of triangles, anticlockwise seen from outside, mm: what a piece fills, inside the middle of
/// its fabric, for volumes, mass and what touches what.
struct Solid {
    std::vector<Vec3> points;
    std::vector<std::array<std::uint32_t, 3>> triangles;
    /// The first so many are fabric; those after them close open ends.
    std::size_t fabric = std::numeric_limits<std::size_t>::max();

    [[nodiscard]] bool empty() const { return triangles.empty(); }
};

/// Edges of the fabric, both of them among these.
struct EdgeSpan {
    std::size_t first = 0;
    std::size_t last = 0;
};

/// The solid of a fabric, with so many points around each edge; open ends are closed by a fan to the middle
/// of their edge.
[[nodiscard]] Solid solid_of(const FabricGeometry& fabric, std::size_t around = 64);
/// The same between two edges alone, cut off flat there.
[[nodiscard]] Solid solid_of(const FabricGeometry& fabric, const EdgeSpan& edges, std::size_t around = 64);
/// A sheet (`RoundEnds::nowhere`) as thick as its fabric, half of that on either side of its middle; two
/// points a loop of its last edge. The first side is its fabric.
[[nodiscard]] Solid solid_of_sheet(const FabricGeometry& sheet, double thickness_mm);
/// A closed mesh as it is.
[[nodiscard]] Solid solid_of(const Mesh& mesh);

/// A volume and where its middle is.
struct VolumeMeasure {
    double volume_mm3 = 0;
    Vec3 centre = Vec3::Zero();  ///< of mass, evenly filled; of the points where there is no volume
};

/// By the divergence theorem: every triangle spans a tetrahedron with a fixed point, and their signed volumes
/// add up, as do their first moments (B. Mirtich, Fast and accurate computation of polyhedral mass
/// properties, J. Graphics Tools 1 (1996) 31-50).
[[nodiscard]] VolumeMeasure measure_volume(const Solid& solid);

/// Area of the fabric and the middle of that.
struct AreaMeasure {
    double area_mm2 = 0;
    Vec3 centre = Vec3::Zero();
};
[[nodiscard]] AreaMeasure measure_area(const Solid& solid);

/// The lowest part of a solid that holds so much, filled as a liquid would; all of it where it holds less.
/// `down`: a unit vector.
[[nodiscard]] VolumeMeasure lowest_part(const Solid& solid, const Vec3& down, double volume_mm3);

/// The volume that lies in both. Each is cut by parallel lines, `across` of them each way over the box that
/// both have in common; a line is in a solid where the solid's triangles wind around it, and what the two
/// have in common on it is added up. Its error falls faster than the lines come closer together: about 0.1 %
/// with 128.
[[nodiscard]] double overlap_volume_mm3(const Solid& a, const Solid& b, int across = 64);

}  // namespace roundwright
