#pragma once

#include <span>
#include <vector>

#include "core/assembly/placed_toy.h"

namespace roundwright {

/// A point of a surface with its outward normal, in the frame of its piece, mm.
struct SurfaceSpot {
    Vec3 place = Vec3::Zero();
    Vec3 normal = Vec3::UnitY();

    friend bool operator==(const SurfaceSpot&, const SurfaceSpot&) = default;
};

/// A spot with its place on the fabric.
struct FabricSpot {
    SurfaceSpot spot;
    SurfacePlace at;
};

/// The shortest ways that leave a place of a piece in given directions, walked in small steps: each goes on
/// straight in the plane of its normal and falls back onto the surface, so that it turns to neither side (do
/// Carmo, Differential Geometry of Curves and Surfaces, 4-4). Over an edge of the fabric a way does not lead.
class GeodesicRays {
  public:
    /// `directions`: about at right angles to the surface's normal there; `reach_mm`: how far.
    GeodesicRays(const SolvedPiece& onto, const SurfacePlace& from, std::span<const Vec3> directions,
                 double reach_mm);
    /// From a pole, straight over what closes it to the loop at its end of the fabric, and on from there.
    GeodesicRays(const SolvedPiece& onto, const SurfaceSpot& pole, double end_mm,
                 std::span<const Vec3> directions, double reach_mm);

    [[nodiscard]] std::size_t rays() const { return ways_.size(); }
    [[nodiscard]] double reach_mm() const { return reach_mm_; }
    /// So far along a ray: between its steps by a cubic that leaves the surface by very little, or exactly on
    /// the surface.
    [[nodiscard]] SurfaceSpot at(std::size_t ray, double distance_mm) const;
    [[nodiscard]] FabricSpot on_surface(std::size_t ray, double distance_mm) const;
    /// Length of the closed line through all rays at one distance: the geodesic circle, whose rays are taken
    /// to be equally many degrees apart. The chords' shortness is made up for as on a circle.
    [[nodiscard]] double circle_length_mm(double distance_mm) const;
    /// The least distance at which the circle is so long; that of the longest where none is.
    [[nodiscard]] double distance_of_circle_mm(double length_mm) const;

  private:
    struct Step {
        SurfaceSpot spot;
        Vec3 direction;
        double travelled = 0;
        SurfacePlace place;
    };
    using Way = std::vector<Step>;
    void walk_on(Way& way) const;
    /// The first step at or beyond a distance; none: the ray ends before.
    [[nodiscard]] std::size_t step_beyond(const Way& way, double distance_mm) const;

    const SolvedPiece& onto_;
    double reach_mm_;
    double step_mm_;
    std::vector<Way> ways_;
};

/// The spot of a piece's surface nearest to a point that is not far from it, looked for from `hint` on, which
/// becomes its place.
[[nodiscard]] SurfaceSpot nearby_spot(const SolvedPiece& piece, const Vec3& point, SurfacePlace& hint);

}  // namespace roundwright
