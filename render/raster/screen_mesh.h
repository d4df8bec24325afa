#pragma once

#include <Eigen/Core>
#include <cstdint>
#include <vector>

#include "core/mesh/stitch_surface.h"
#include "render/raster/camera.h"
#include "render/raster/depth_buffer.h"

namespace roundwright::render {

/// A mesh as a camera sees it.
class ScreenMesh {
  public:
    /// On a picture of so many samples. What lies nearer than the near plane is cut away. `closed`: its inner
    /// side cannot be seen from outside its bounds.
    ScreenMesh(const Mesh& mesh, const Camera& camera, int width, int height, bool closed);

    /// Vertices in the eye's frame: x right, y up, z towards the viewer.
    [[nodiscard]] const std::vector<Eigen::Vector3f>& eye_positions() const { return eye_; }

    /// Visits the triangles that may be seen, with their numbers, cut if need be: use(a, b, c, triangle).
    template <typename Use>
    void for_each_triangle(const Use& use) const {
        for (std::uint32_t t = 0; t < mesh_.triangle_count(); ++t) with_triangle(t, use);
    }
    template <typename Use>
    void with_triangle(std::uint32_t triangle, const Use& use) const {
        const std::uint32_t* corner = &mesh_.indices[3 * static_cast<std::size_t>(triangle)];
        const ScreenPoint &a = screen_[corner[0]], &b = screen_[corner[1]], &c = screen_[corner[2]];
        if (a.nearness > 0 && b.nearness > 0 && c.nearness > 0) {
            const float turn = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
            if (!one_sided_ || turn < 0) use(a, b, c, triangle);
            return;
        }
        ScreenPoint cut[4];
        const std::size_t corners = cut_triangle(corner, cut);
        for (std::size_t k = 2; k < corners; ++k) use(cut[0], cut[k - 1], cut[k], triangle);
    }

  private:
    [[nodiscard]] ScreenPoint on_screen(const Eigen::Vector3f& eye) const;
    std::size_t cut_triangle(const std::uint32_t* corners, ScreenPoint* cut) const;

    const Mesh& mesh_;
    std::vector<Eigen::Vector3f> eye_;
    std::vector<ScreenPoint> screen_;  ///< nearness 0: before the near plane
    float near_ = 0;
    float half_x_ = 0, half_y_ = 0, scale_x_ = 1, scale_y_ = 1;
    bool one_sided_ = false;
};

}  // namespace roundwright::render
