#pragma once

#include <memory>
#include <vector>

#include "core/face/face_geometry.h"
#include "core/mesh/fabric_geometry.h"
#include "core/shape/solve_shape.h"
#include "core/toy/toy.h"

namespace roundwright {

/// The surface of a piece as features see it; a cheap value. Of a shape that is not usable it has no loops,
/// and nothing can be placed on it.
class FaceSurface {
  public:
    /// A surface of revolution or a flattened one by its loops (`RevolvedFace`): the closed forms that typing
    /// and dragging wait for.
    FaceSurface(const Piece& piece, const Shape& shape);
    /// Any fabric (`FabricFace`).
    FaceSurface(const Piece& piece, std::shared_ptr<const FabricGeometry> fabric);

    [[nodiscard]] bool empty() const { return geometry_ == nullptr; }
    /// Parameter of the far end of the meridian, mm.
    [[nodiscard]] double end_mm() const { return empty() ? 0 : geometry_->end_mm(); }
    /// Loop k, from 0 (the start); round k (from 0) leaves loop k + 1.
    [[nodiscard]] int loops() const {
        return empty() ? 0 : static_cast<int>(geometry_->along_of_loops().size());
    }
    [[nodiscard]] double along_of_loop(int loop) const {
        return geometry_->along_of_loops()[static_cast<std::size_t>(loop)];
    }
    [[nodiscard]] double width_mm() const { return empty() ? 0 : geometry_->width_mm(); }
    [[nodiscard]] double height_mm() const { return empty() ? 0 : geometry_->height_mm(); }

    [[nodiscard]] SurfacePoint at(const SurfacePlace& place) const {
        return empty() ? SurfacePoint{} : geometry_->at(place);
    }
    /// The place nearest to a point in space.
    [[nodiscard]] SurfacePlace nearest(const Vec3& point) const {
        return empty() ? SurfacePlace{} : geometry_->nearest(point);
    }
    /// Length of the shortest way along the surface from one place to another, mm.
    [[nodiscard]] double distance_along_mm(const SurfacePlace& from, const SurfacePlace& to) const {
        return empty() ? 0 : geometry_->distance_along_mm(from, to);
    }

  private:
    std::shared_ptr<const FaceGeometry> geometry_;
};

}  // namespace roundwright
