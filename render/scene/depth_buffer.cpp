#include "render/scene/depth_buffer.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace roundwright::render {

using Eigen::Vector3f;

DepthBuffer::DepthBuffer(int width, int height)
    : width_(std::max(1, width)),
      height_(std::max(1, height)),
      nearness_(static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_), 0),
      ids_(nearness_.size(), none) {}

std::vector<Vector3f> DepthBuffer::in_eye_frame(const Mesh& mesh, const Camera& camera) {
    const ViewAxes axes = camera.axes();
    Eigen::Matrix3f turn;
    turn << axes.right.cast<float>().transpose(), axes.up.cast<float>().transpose(),
        axes.back.cast<float>().transpose();
    const Vector3f eye = camera.eye().cast<float>();
    std::vector<Vector3f> out(mesh.vertex_count());
    for (std::size_t i = 0; i < out.size(); ++i) {
        out[i] =
            turn *
            (Vector3f(mesh.positions[3 * i], mesh.positions[3 * i + 1], mesh.positions[3 * i + 2]) - eye);
    }
    return out;
}

// Edge functions after Pineda, "A parallel algorithm for polygon rasterization", SIGGRAPH 1988. One over the
// depth is affine on the screen.
void DepthBuffer::fill(const Corner& a, const Corner& b, const Corner& c, std::uint32_t id, int top,
                       int bottom) {
    const float area = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
    if (!(std::abs(area) > 1e-12F)) return;
    const auto pixel = [](float v, int most) {
        return static_cast<int>(std::clamp(v, 0.0F, static_cast<float>(most)));
    };
    const int left = pixel(std::ceil(std::min({a.x, b.x, c.x}) - 0.5F), width_);
    const int right = pixel(std::floor(std::max({a.x, b.x, c.x}) - 0.5F) + 1, width_);
    const int first = std::max(top, pixel(std::ceil(std::min({a.y, b.y, c.y}) - 0.5F), height_));
    const int last = std::min(bottom, pixel(std::floor(std::max({a.y, b.y, c.y}) - 0.5F) + 1, height_));
    const float inverse = 1 / area;
    const float wb_x = (c.y - a.y) * inverse, wb_y = -(c.x - a.x) * inverse;
    const float wc_x = -(b.y - a.y) * inverse, wc_y = (b.x - a.x) * inverse;
    constexpr float slack = -1e-5F;
    for (int y = first; y < last; ++y) {
        const float py = static_cast<float>(y) + 0.5F - a.y;
        std::size_t at = index(left, y);
        for (int x = left; x < right; ++x, ++at) {
            const float px = static_cast<float>(x) + 0.5F - a.x;
            const float wb = px * wb_x + py * wb_y;
            const float wc = px * wc_x + py * wc_y;
            if (wb < slack || wc < slack || wb + wc > 1 - slack) continue;
            const float near = a.nearness + wb * (b.nearness - a.nearness) + wc * (c.nearness - a.nearness);
            if (near <= nearness_[at]) continue;
            nearness_[at] = near;
            ids_[at] = id;
        }
    }
}

void DepthBuffer::draw(const Mesh& mesh, const std::vector<Vector3f>& eye_positions, const Camera& camera,
                       std::uint32_t first_id, int top, int bottom) {
    const auto near = static_cast<float>(camera.near_plane());
    const float half_x = static_cast<float>(width_) / 2, half_y = static_cast<float>(height_) / 2;
    const float scale_x = half_x / static_cast<float>(camera.half_width());
    const float scale_y = half_y / static_cast<float>(camera.half_height());
    const auto on_screen = [&](const Vector3f& p) {
        const float nearness = -1 / p.z();
        return Corner{half_x + scale_x * p.x() * nearness, half_y - scale_y * p.y() * nearness, nearness};
    };
    const std::size_t triangles = mesh.triangle_count();
    for (std::size_t t = 0; t < triangles; ++t) {
        const std::array<Vector3f, 3> p = {eye_positions[mesh.indices[3 * t]],
                                           eye_positions[mesh.indices[3 * t + 1]],
                                           eye_positions[mesh.indices[3 * t + 2]]};
        std::array<Vector3f, 4> kept;
        std::size_t count = 0;
        for (std::size_t k = 0; k < 3; ++k) {
            const Vector3f& from = p[k];
            const Vector3f& to = p[(k + 1) % 3];
            const bool from_in = from.z() <= -near, to_in = to.z() <= -near;
            if (from_in) kept[count++] = from;
            if (from_in != to_in)
                kept[count++] = from + (to - from) * ((-near - from.z()) / (to.z() - from.z()));
        }
        const auto id = first_id + static_cast<std::uint32_t>(t);
        for (std::size_t k = 2; k < count; ++k) {
            fill(on_screen(kept[0]), on_screen(kept[k - 1]), on_screen(kept[k]), id, top, bottom);
        }
    }
}

}  // namespace roundwright::render
