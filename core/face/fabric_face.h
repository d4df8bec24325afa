#pragma once

#include <memory>
#include <mutex>
#include <vector>

#include "core/face/face_geometry.h"
#include "core/face/mesh_geodesic.h"
#include "core/mesh/mean_surface.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Any fabric as features see it. The middle of the face runs up it where each loop, seen from its own
/// centre, is turned the way that the face looks (`Piece::face_degrees`); places are stitches to the right of
/// that, and distances are measured on the mesh.
class FabricFace final : public FaceGeometry {
  public:
    /// `fabric` has a round at least.
    FabricFace(const Piece& piece, std::shared_ptr<const FabricGeometry> fabric);

    [[nodiscard]] double end_mm() const override { return along_.back(); }
    [[nodiscard]] const std::vector<double>& along_of_loops() const override { return along_; }
    [[nodiscard]] double width_mm() const override { return width_mm_; }
    [[nodiscard]] double height_mm() const override { return height_mm_; }
    [[nodiscard]] SurfacePoint at(const SurfacePlace& place) const override;
    [[nodiscard]] SurfacePlace nearest(const Vec3& point) const override;
    [[nodiscard]] double distance_along_mm(const SurfacePlace& from, const SurfacePlace& to) const override;

  private:
    /// Between which edges, and how far from the lower one to the upper.
    struct Level {
        std::size_t edge;
        double up;
    };
    [[nodiscard]] Level level(double along_mm) const;
    /// In loops from the start of the edge's round, as worked: the stitch, and the share of it.
    [[nodiscard]] double stitches_along(std::size_t edge, double angle) const;
    [[nodiscard]] double middle_of_face(std::size_t edge) const;
    [[nodiscard]] FabricPoint on_edge(std::size_t edge, double angle) const;
    [[nodiscard]] FabricPoint point(const SurfacePlace& place) const;
    void measure();

    std::shared_ptr<const FabricGeometry> fabric_;
    MeanSurface surface_;
    double face_radians_;
    double turned_;  ///< -1: it stands on its end, and work goes to the right
    std::vector<double> along_, middle_;
    double width_mm_ = 0, height_mm_ = 0, lowest_mm_ = 0;
    mutable std::once_flag measured_;
    mutable std::unique_ptr<const MeshGeodesics> geodesics_;
};

}  // namespace roundwright
