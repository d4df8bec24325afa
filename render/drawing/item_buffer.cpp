#include "render/drawing/item_buffer.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace roundwright::render {
namespace {

Vec3 vertex(const Mesh& mesh, std::uint32_t index) {
    const float* p = &mesh.positions[3u * index];
    return {p[0], p[1], p[2]};
}

}  // namespace

ItemBuffer::ItemBuffer(const QRectF& area, double cell_mm, std::size_t most_cells) : area_(area) {
    const double coarsest =
        std::sqrt(std::max(area.width() * area.height(), 1e-12) / static_cast<double>(most_cells));
    cell_mm_ = std::max({cell_mm, coarsest, std::max(area.width(), area.height()) / 16'000, 1e-6});
    width_ = static_cast<int>(std::ceil(area.width() / cell_mm_)) + 1;
    height_ = static_cast<int>(std::ceil(area.height() / cell_mm_)) + 1;
    const auto cells = static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_);
    depths_.assign(cells, std::numeric_limits<float>::lowest());
    items_.assign(cells, nothing);
}

void ItemBuffer::draw(const Mesh& mesh, const Projection& projection, std::uint32_t first_number) {
    std::vector<Vec3> places(mesh.vertex_count());
    for (std::uint32_t v = 0; v < places.size(); ++v) {
        const Vec3 p = projection(vertex(mesh, v));
        places[v] =
            Vec3((p.x() - area_.left()) / cell_mm_ - 0.5, (p.y() - area_.top()) / cell_mm_ - 0.5, p.z());
    }
    for (std::uint32_t t = 0; t < mesh.triangle_count(); ++t)
        fill(places[mesh.indices[3u * t]], places[mesh.indices[3u * t + 1]], places[mesh.indices[3u * t + 2]],
             first_number + t);
}

/// By half planes over the triangle's own rows, each row's stretch found from the edges.
void ItemBuffer::fill(const Vec3& a, const Vec3& b, const Vec3& c, std::uint32_t number) {
    const double twice_area = (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
    if (std::abs(twice_area) < 1e-12) return;
    const Vec3* const corners[] = {&a, &b, &c};
    const int low = std::max(0, static_cast<int>(std::ceil(std::min({a.y(), b.y(), c.y()}))));
    const int high = std::min(height_ - 1, static_cast<int>(std::floor(std::max({a.y(), b.y(), c.y()}))));
    const double depth_x =
        ((b.z() - a.z()) * (c.y() - a.y()) - (c.z() - a.z()) * (b.y() - a.y())) / twice_area;
    const double depth_y =
        ((c.z() - a.z()) * (b.x() - a.x()) - (b.z() - a.z()) * (c.x() - a.x())) / twice_area;
    for (int row = low; row <= high; ++row) {
        double left = std::numeric_limits<double>::max(), right = -left;
        for (int k = 0; k < 3; ++k) {
            const Vec3& from = *corners[k];
            const Vec3& to = *corners[(k + 1) % 3];
            if ((from.y() > row) == (to.y() > row) && from.y() != row) continue;
            const double rise = to.y() - from.y();
            const double x = rise == 0 ? from.x() : from.x() + (row - from.y()) / rise * (to.x() - from.x());
            left = std::min(left, x);
            right = std::max(right, x);
        }
        const int first = std::max(0, static_cast<int>(std::ceil(left)));
        const int last = std::min(width_ - 1, static_cast<int>(std::floor(right)));
        for (int column = first; column <= last; ++column) {
            const auto depth =
                static_cast<float>(a.z() + (column - a.x()) * depth_x + (row - a.y()) * depth_y);
            const std::size_t k = index(column, row);
            if (depth <= depths_[k]) continue;
            depths_[k] = depth;
            items_[k] = number;
        }
    }
}

std::uint32_t ItemBuffer::item_at(const QPointF& place) const {
    const auto column = static_cast<int>(std::floor((place.x() - area_.left()) / cell_mm_));
    const auto row = static_cast<int>(std::floor((place.y() - area_.top()) / cell_mm_));
    if (column < 0 || row < 0 || column >= width_ || row >= height_) return nothing;
    return at(column, row);
}

QRectF projected_bounds(const Mesh& mesh, const Projection& projection) {
    if (mesh.positions.empty()) return {};
    double left = std::numeric_limits<double>::max(), low = left, right = -left, high = -left;
    for (std::uint32_t v = 0; v < mesh.vertex_count(); ++v) {
        const Vec3 p = projection(vertex(mesh, v));
        left = std::min(left, p.x());
        right = std::max(right, p.x());
        low = std::min(low, p.y());
        high = std::max(high, p.y());
    }
    return {left, low, right - left, high - low};
}

}  // namespace roundwright::render
