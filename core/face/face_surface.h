#pragma once

#include <vector>

#include "core/base/vec.h"
#include "core/face/smooth_profile.h"
#include "core/shape/solve_shape.h"
#include "core/toy/toy.h"

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

/// The solved surface as features see it: a smooth surface of revolution through the solved loops. On a
/// flattened piece angles are shares of the way around, and its front and back are the faces of its layers.
/// A shape that is not usable gives a surface with no loops, on which nothing can be placed.
class FaceSurface {
  public:
    FaceSurface(const Piece& piece, const Shape& shape);

    [[nodiscard]] bool empty() const { return profile_.empty(); }
    /// Parameter of the far end of the meridian, mm.
    [[nodiscard]] double end_mm() const { return profile_.end(); }
    /// Loop k, from 0 (the start); round k (from 0) leaves loop k + 1.
    [[nodiscard]] int loops() const { return static_cast<int>(loop_of_.size()); }
    [[nodiscard]] double along_of_loop(int loop) const { return loop_of_[static_cast<std::size_t>(loop)]; }
    [[nodiscard]] double width_mm() const { return width_mm_; }
    [[nodiscard]] double height_mm() const { return height_mm_; }

    [[nodiscard]] SurfacePoint at(const SurfacePlace& place) const;
    /// The place nearest to a point in space, on the meridian at its angle.
    [[nodiscard]] SurfacePlace nearest(const Vec3& point) const;

    /// Length of the shortest way along the surface from one place to another, mm: round the axis, or over a
    /// closed end where that is shorter.
    [[nodiscard]] double distance_along_mm(const SurfacePlace& from, const SurfacePlace& to) const;

  private:
    [[nodiscard]] LoopSection section_at(double along_mm) const;
    [[nodiscard]] SurfacePoint at_flattened(const SurfacePlace& place) const;
    [[nodiscard]] double flattened_distance_mm(const SurfacePlace& from, const SurfacePlace& to) const;
    [[nodiscard]] double flattened_angle(double along_mm, const Vec3& point) const;
    /// The best of what is near the meridian's samples; `distance` by the way along.
    template <class Distance>
    [[nodiscard]] double nearest_along(const Distance& distance) const;

    SmoothProfile profile_;              ///< (radius, height), upright, from the start
    std::vector<double> loop_of_;        ///< parameter of each loop
    std::vector<LoopSection> sections_;  ///< of a flattened piece, one a loop
    double width_mm_ = 0;
    double height_mm_ = 0;
    double face_radians_ = 0;
    bool upside_down_ = false;
    bool closed_start_ = false;
    bool closed_end_ = false;
};

}  // namespace roundwright
