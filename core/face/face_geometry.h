#pragma once

#include <vector>

#include "core/base/vec.h"

namespace roundwright {

/// A place on a piece: so far along the meridian from the start (mm), and at an angle about the axis
/// (radians, from the middle of the face to the viewer's right).
struct SurfacePlace {
    double along_mm = 0;
    double angle = 0;

    friend bool operator==(const SurfacePlace&, const SurfacePlace&) = default;
};

/// A point of the surface with the directions around it, in the frame of StitchSurface (y up, face where
/// `Piece::face_degrees` says), mm.
struct SurfacePoint {
    Vec3 point = Vec3::Zero();
    Vec3 normal = Vec3::UnitZ();    ///< outwards
    Vec3 right = Vec3::UnitX();     ///< along the round, to the viewer's right
    Vec3 up = Vec3::UnitY();        ///< along the meridian, upwards
    double height_mm = 0;           ///< above the lowest point of the piece
    double radius_mm = 0;           ///< of the loop through the point; half its width in a flattened piece
    double meridian_curvature = 0;  ///< 1/mm, positive where the surface bulges
    double round_curvature = 0;     ///< the other principal curvature
};

/// How a piece lies as features see it, whatever its shape: the face is in front, places are counted along
/// its fabric and around it, and stitches of a round are equal shares of the way around.
class FaceGeometry {
  public:
    virtual ~FaceGeometry() = default;

    [[nodiscard]] virtual double end_mm() const = 0;
    /// How far along every loop is, the start's first.
    [[nodiscard]] virtual const std::vector<double>& along_of_loops() const = 0;
    [[nodiscard]] virtual double width_mm() const = 0;
    [[nodiscard]] virtual double height_mm() const = 0;

    [[nodiscard]] virtual SurfacePoint at(const SurfacePlace& place) const = 0;
    /// The place nearest to a point in space.
    [[nodiscard]] virtual SurfacePlace nearest(const Vec3& point) const = 0;
    /// Length of the shortest way along the fabric, mm.
    [[nodiscard]] virtual double distance_along_mm(const SurfacePlace& from,
                                                   const SurfacePlace& to) const = 0;
};

}  // namespace roundwright
