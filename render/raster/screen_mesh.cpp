#include "render/raster/screen_mesh.h"

#include <Eigen/Geometry>

namespace roundwright::render {

using Eigen::Vector3f;

ScreenMesh::ScreenMesh(const Mesh& mesh, const Camera& camera, int width, int height, bool closed)
    : mesh_(mesh),
      near_(static_cast<float>(camera.near_plane())),
      half_x_(static_cast<float>(width) / 2),
      half_y_(static_cast<float>(height) / 2),
      scale_x_(half_x_ / static_cast<float>(camera.half_width())),
      scale_y_(half_y_ / static_cast<float>(camera.half_height())) {
    const ViewAxes axes = camera.axes();
    Eigen::Matrix3f turn;
    turn << axes.right.cast<float>().transpose(), axes.up.cast<float>().transpose(),
        axes.back.cast<float>().transpose();
    const Vector3f eye = camera.eye().cast<float>();
    Eigen::AlignedBox3f bounds;
    eye_.resize(mesh.vertex_count());
    screen_.resize(eye_.size());
    for (std::size_t i = 0; i < eye_.size(); ++i) {
        const Vector3f place(mesh.positions[3 * i], mesh.positions[3 * i + 1], mesh.positions[3 * i + 2]);
        if (closed) bounds.extend(place);
        eye_[i] = turn * (place - eye);
        screen_[i] = on_screen(eye_[i]);
    }
    one_sided_ = closed && !bounds.contains(eye);
}

ScreenPoint ScreenMesh::on_screen(const Vector3f& eye) const {
    if (eye.z() > -near_) return {0, 0, 0};
    const float nearness = -1 / eye.z();
    return {half_x_ + scale_x_ * eye.x() * nearness, half_y_ - scale_y_ * eye.y() * nearness, nearness};
}

std::size_t ScreenMesh::cut_triangle(const std::uint32_t* corners, ScreenPoint* cut) const {
    std::size_t count = 0;
    for (std::size_t k = 0; k < 3; ++k) {
        const Vector3f &from = eye_[corners[k]], &to = eye_[corners[(k + 1) % 3]];
        const bool from_in = from.z() <= -near_, to_in = to.z() <= -near_;
        if (from_in) cut[count++] = on_screen(from);
        if (from_in == to_in) continue;
        Vector3f crossing = from + (to - from) * ((-near_ - from.z()) / (to.z() - from.z()));
        crossing.z() = -near_;
        cut[count++] = on_screen(crossing);
    }
    return count;
}

}  // namespace roundwright::render
