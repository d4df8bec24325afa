#pragma once

#include <Eigen/Core>
#include <cstdint>
#include <vector>

#include "core/mesh/stitch_surface.h"
#include "render/scene/camera.h"

namespace roundwright::render {

/// The nearest triangle at each sample of a picture, of one or several meshes.
class DepthBuffer {
  public:
    static constexpr std::uint32_t none = 0xffffffffU;

    DepthBuffer(int width, int height);

    /// Mesh vertices in the eye's frame: x right, y up, z towards the viewer.
    [[nodiscard]] static std::vector<Eigen::Vector3f> in_eye_frame(const Mesh& mesh, const Camera& camera);

    /// Draws the mesh's triangles with identities counted on from `first_id`; what lies nearer than the near
    /// plane is cut away. Only rows from `top` up to `bottom` are touched.
    void draw(const Mesh& mesh, const std::vector<Eigen::Vector3f>& eye_positions, const Camera& camera,
              std::uint32_t first_id, int top, int bottom);

    [[nodiscard]] int width() const { return width_; }
    [[nodiscard]] int height() const { return height_; }
    [[nodiscard]] std::uint32_t id(int x, int y) const { return ids_[index(x, y)]; }
    /// One over the depth, 1/mm; 0 where nothing was drawn.
    [[nodiscard]] float nearness(int x, int y) const { return nearness_[index(x, y)]; }

  private:
    struct Corner {
        float x, y, nearness;
    };
    [[nodiscard]] std::size_t index(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) + static_cast<std::size_t>(x);
    }
    void fill(const Corner& a, const Corner& b, const Corner& c, std::uint32_t id, int top, int bottom);

    int width_;
    int height_;
    std::vector<float> nearness_;
    std::vector<std::uint32_t> ids_;
};

}  // namespace roundwright::render
