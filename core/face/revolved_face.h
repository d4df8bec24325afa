#pragma once

#include <memory>
#include <mutex>
#include <vector>

#include "core/face/face_geometry.h"
#include "core/face/mesh_geodesic.h"
#include "core/face/smooth_profile.h"
#include "core/shape/solve_shape.h"
#include "core/toy/toy.h"

namespace roundwright {

/// A smooth surface of revolution through the solved loops. On a flattened piece angles are shares of the way
/// around, and its front and back are the faces of its layers.
class RevolvedFace final : public FaceGeometry {
  public:
    RevolvedFace(const Piece& piece, const Shape& shape);

    [[nodiscard]] bool empty() const { return profile_.empty(); }
    [[nodiscard]] double end_mm() const override { return profile_.end(); }
    [[nodiscard]] const std::vector<double>& along_of_loops() const override { return loop_of_; }
    [[nodiscard]] double width_mm() const override { return width_mm_; }
    [[nodiscard]] double height_mm() const override { return height_mm_; }
    [[nodiscard]] SurfacePoint at(const SurfacePlace& place) const override;
    /// On the meridian at the point's angle.
    [[nodiscard]] SurfacePlace nearest(const Vec3& point) const override;
    /// Round the axis, or over a closed end where that is shorter: in closed form for what is round and
    /// within a layer, on the mesh from one layer to the other.
    [[nodiscard]] double distance_along_mm(const SurfacePlace& from, const SurfacePlace& to) const override;

  private:
    [[nodiscard]] LoopSection section_at(double along_mm) const;
    [[nodiscard]] SurfacePoint at_flattened(const SurfacePlace& place) const;
    [[nodiscard]] double flattened_distance_mm(const SurfacePlace& from, const SurfacePlace& to) const;
    [[nodiscard]] Mesh flattened_mesh() const;
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
    bool joined_start_ = false;  ///< the layers of a flattened piece are joined there
    bool joined_end_ = false;
    mutable std::once_flag measured_;
    mutable std::unique_ptr<const MeshGeodesics> geodesics_;  ///< of a flattened piece
};

}  // namespace roundwright
