#pragma once

#include <Eigen/Core>
#include <array>
#include <cstdint>
#include <stop_token>
#include <vector>

#include <QColor>
#include <QSize>

#include "render/raster/fabric_picture.h"
#include "render/raster/screen_mesh.h"
#include "render/raster/software_picture.h"

namespace roundwright::render {

/// The picture is drawn in squares of so many pixels a side, whose buffers fit the processor's cache.
inline constexpr int tile_pixels = 64;

/// A mesh made ready to be drawn.
struct DrawnMesh {
    ShadedMesh source;
    ScreenMesh screen;
    std::vector<Eigen::Vector3f> colours;  ///< linear
    std::uint32_t first_id = 0;
    bool fabric = false;
};

/// Numbers of the triangles that reach into each tile.
using Bins = std::vector<std::vector<std::uint32_t>>;

/// A picture to be drawn: what each of its tiles needs to know.
struct DrawingJob {
    const SoftwareScene& scene;
    Camera camera;
    QSize size;
    int samples;
    int tiles_across;
    int tiles_down;
    std::vector<DrawnMesh> meshes;
    Bins solid_bins;
    std::vector<ScreenMesh> ghost;  ///< one at most
    Bins ghost_bins;
    Eigen::Matrix3f to_eye;
    Eigen::Vector3f ghost_colour;
    std::array<const FacePicture*, stitch_faces> faces{};
    std::stop_token stop;
    bool every_other_pixel = false;
    QColor behind{};  ///< what is drawn on: clear where a rim and the ground are laid under it afterwards

    /// Of a triangle by its number among those of all meshes.
    [[nodiscard]] const DrawnMesh& owner_of(std::uint32_t id) const;
    [[nodiscard]] float pixel_angle() const {
        return static_cast<float>(2 * camera.half_height() / size.height());
    }
};

[[nodiscard]] DrawingJob prepared_job(const SoftwareScene& scene, const Camera& camera, QSize size,
                                      int samples);

/// Linear 0..1.
[[nodiscard]] Eigen::Vector3f linear(const QColor& colour);

}  // namespace roundwright::render
