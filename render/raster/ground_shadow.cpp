#include "render/raster/ground_shadow.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <vector>

#include <QPainter>

namespace roundwright::render {
namespace {

/// The shadow is soft enough for a picture of fewer pixels.
constexpr int most_pixels = 500;
/// Of the picture's width.
constexpr double wide_blur = 0.03, near_blur = 0.015;
constexpr double wide_strength = 0.22, near_strength = 0.26;
/// Of the height of what casts it, that its softness reaches further.
constexpr double softness = 0.08;
/// Of the height of what casts it: so much of it is near the table.
constexpr double near_share = 0.15;
/// To the right, and away from the eye, over the height of what casts it.
constexpr double aside = 0.16, away = 0.10;

using Grey = std::vector<float>;

/// Means over 2 r + 1 pixels along rows or columns; three times over it is close to a Gaussian.
void blur_lines(Grey& grey, int lines, int length, int from_line, int from_pixel, int radius) {
    Grey line(static_cast<std::size_t>(length));
    for (int k = 0; k < lines; ++k) {
        const auto at = [&](int i) -> float& {
            return grey[static_cast<std::size_t>(k * from_line + i * from_pixel)];
        };
        double sum = 0;
        for (int i = -radius; i <= radius; ++i) sum += at(std::clamp(i, 0, length - 1));
        for (int i = 0; i < length; ++i) {
            line[static_cast<std::size_t>(i)] = static_cast<float>(sum / (2 * radius + 1));
            sum += at(std::min(i + radius + 1, length - 1)) - at(std::max(i - radius, 0));
        }
        for (int i = 0; i < length; ++i) at(i) = line[static_cast<std::size_t>(i)];
    }
}

void blur(Grey& grey, QSize size, double radius) {
    const int pixels = std::max(1, static_cast<int>(std::lround(radius)));
    for (int pass = 0; pass < 3; ++pass) {
        blur_lines(grey, size.height(), size.width(), size.width(), 1, pixels);
        blur_lines(grey, size.width(), size.height(), 1, size.width(), pixels);
    }
}

class Caster {
  public:
    Caster(const std::vector<const Mesh*>& meshes, const Camera& camera) : meshes_(meshes), camera_(camera) {
        for (const Mesh* mesh : meshes_)
            for (std::size_t i = 1; i < mesh->positions.size(); i += 3) {
                low_ = std::min<double>(low_, mesh->positions[i]);
                high_ = std::max<double>(high_, mesh->positions[i]);
            }
        scale_ = std::min(1.0, most_pixels / std::max(camera.viewport_width(), camera.viewport_height()));
        size_ = {std::max(1, static_cast<int>(camera.viewport_width() * scale_)),
                 std::max(1, static_cast<int>(camera.viewport_height() * scale_))};
        const ViewAxes axes = camera.axes();
        right_ = Vec3(axes.right.x(), 0, axes.right.z());
        ahead_ = Vec3(-axes.back.x(), 0, -axes.back.z());
    }

    [[nodiscard]] QSize size() const { return size_; }

    /// Where triangles up to a height fall, softened.
    [[nodiscard]] Grey cast(double share_of_height, double blur_share) const {
        QImage mask(size_, QImage::Format_Grayscale8);
        mask.fill(Qt::black);
        QPainter painter(&mask);
        painter.setPen(Qt::NoPen);
        painter.setBrush(Qt::white);
        const double highest = low_ + share_of_height * (high_ - low_);
        for (const Mesh* mesh : meshes_)
            for (std::size_t i = 0; i + 2 < mesh->indices.size(); i += 3)
                draw(painter, *mesh, &mesh->indices[i], highest);
        painter.end();
        Grey grey(static_cast<std::size_t>(size_.width() * size_.height()));
        for (int y = 0; y < size_.height(); ++y)
            for (int x = 0; x < size_.width(); ++x)
                grey[static_cast<std::size_t>(y * size_.width() + x)] =
                    static_cast<float>(mask.constScanLine(y)[x]) / 255.0F;
        blur(grey, size_, blur_share * size_.width());
        return grey;
    }

  private:
    void draw(QPainter& painter, const Mesh& mesh, const std::uint32_t* corners, double highest) const {
        std::array<QPointF, 3> fallen;
        for (std::size_t k = 0; k < 3; ++k) {
            const std::size_t i = 3 * static_cast<std::size_t>(corners[k]);
            const Vec3 at(mesh.positions[i], mesh.positions[i + 1], mesh.positions[i + 2]);
            if (at.y() > highest) return;
            const double up = at.y() - low_;
            const Vec3 down = Vec3(at.x(), low_, at.z()) + up * (aside * right_ + away * ahead_);
            const Vec3 seen = camera_.project(down);
            fallen[k] = QPointF(seen.x() * scale_, seen.y() * scale_);
        }
        painter.drawConvexPolygon(fallen.data(), 3);
    }

    const std::vector<const Mesh*>& meshes_;
    const Camera& camera_;
    double low_ = std::numeric_limits<double>::infinity();
    double high_ = -std::numeric_limits<double>::infinity();
    double scale_ = 1;
    QSize size_;
    Vec3 right_, ahead_;
};

}  // namespace

QImage ground_shadow(const std::vector<const Mesh*>& meshes, const Camera& camera) {
    const Caster caster(meshes, camera);
    const Grey wide = caster.cast(1, wide_blur), near = caster.cast(near_share, near_blur);
    QImage shadow(caster.size(), QImage::Format_ARGB32_Premultiplied);
    for (int y = 0; y < shadow.height(); ++y) {
        auto* line = reinterpret_cast<QRgb*>(shadow.scanLine(y));
        for (int x = 0; x < shadow.width(); ++x) {
            const auto at = static_cast<std::size_t>(y * shadow.width() + x);
            const double light = (1 - wide_strength * wide[at]) * (1 - near_strength * near[at]);
            line[x] = qRgba(0, 0, 0, static_cast<int>(std::lround(255 * (1 - light))));
        }
    }
    const QSize pixels(static_cast<int>(camera.viewport_width()), static_cast<int>(camera.viewport_height()));
    return shadow.scaled(pixels, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
}

std::vector<float> reach_of_shadow(const std::vector<const Mesh*>& meshes, const Camera& camera) {
    Vec3 low = Vec3::Constant(std::numeric_limits<double>::infinity()), high = -low;
    for (const Mesh* mesh : meshes)
        for (std::size_t i = 0; i + 2 < mesh->positions.size(); i += 3) {
            const Vec3 at(mesh->positions[i], mesh->positions[i + 1], mesh->positions[i + 2]);
            low = low.cwiseMin(at);
            high = high.cwiseMax(at);
        }
    if (!(low.y() <= high.y())) return {};
    const double height = high.y() - low.y();
    const ViewAxes axes = camera.axes();
    const Vec3 way = height * (aside * Vec3(axes.right.x(), 0, axes.right.z()) -
                               away * Vec3(axes.back.x(), 0, axes.back.z()));
    // Nothing round reaches the corners of its box.
    std::vector<float> points;
    for (const double x : {low.x(), (low.x() + high.x()) / 2, high.x()})
        for (const double z : {low.z(), (low.z() + high.z()) / 2, high.z()}) {
            const bool corner = (x == low.x() || x == high.x()) && (z == low.z() || z == high.z());
            if (corner) continue;
            const Vec3 middle = (low + high) / 2;
            const Vec3 outwards = Vec3(x - middle.x(), 0, z - middle.z());
            const Vec3 soft =
                outwards.norm() > 0 ? Vec3(softness * height * outwards.normalized()) : Vec3(outwards);
            const Vec3 at = Vec3(x, low.y(), z) + way + soft;
            for (int axis = 0; axis < 3; ++axis) points.push_back(static_cast<float>(at[axis]));
        }
    return points;
}

}  // namespace roundwright::render
