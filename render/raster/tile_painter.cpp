#include "render/raster/tile_painter.h"

#include <algorithm>
#include <cmath>

#include "render/raster/corner_vertices.h"
#include "render/raster/seen_point.h"
#include "render/raster/shading.h"

namespace roundwright::render {

namespace {

using Eigen::Vector3f;

/// By table: colours leave in 256 steps.
int level_of(float linear_value) {
    constexpr int steps = 4095;
    static const std::vector<std::uint8_t> table = [] {
        std::vector<std::uint8_t> values(steps + 1);
        for (int i = 0; i <= steps; ++i)
            values[i] = static_cast<std::uint8_t>(std::lround(255 * to_srgb(static_cast<float>(i) / steps)));
        return values;
    }();
    return table[static_cast<std::size_t>(std::clamp(linear_value, 0.0F, 1.0F) * steps + 0.5F)];
}

Vector3f levels_of(const Vector3f& linear_colour) {
    return {static_cast<float>(level_of(linear_colour.x())), static_cast<float>(level_of(linear_colour.y())),
            static_cast<float>(level_of(linear_colour.z()))};
}

QRgb pixel(const Vector3f& premultiplied, float opacity) {
    if (opacity >= 1)
        return qRgb(level_of(premultiplied.x()), level_of(premultiplied.y()), level_of(premultiplied.z()));
    const auto level = [opacity](float value) {
        return opacity > 0
                   ? static_cast<int>(std::lround(opacity * static_cast<float>(level_of(value / opacity))))
                   : 0;
    };
    return qRgba(level(premultiplied.x()), level(premultiplied.y()), level(premultiplied.z()),
                 static_cast<int>(std::lround(255 * opacity)));
}

}  // namespace

TilePainter::TilePainter(const DrawingJob& job, QImage& image)
    : job_(job), bytes_(image.bits()), stride_(image.bytesPerLine()), patches_(job) {
    behind_alpha_ = static_cast<float>(job.behind.alphaF());
    behind_ = linear(job.behind) * behind_alpha_;
    plain_ = pixel(behind_, behind_alpha_);
    behind_levels_ = behind_alpha_ * levels_of(linear(job.behind));
    veil_levels_ = levels_of(job.ghost_colour);
}

void TilePainter::paint(int tile) {
    const QPoint corner(tile % job_.tiles_across * tile_pixels, tile / job_.tiles_across * tile_pixels);
    const QRect part =
        QRect(corner, QSize(tile_pixels, tile_pixels)).intersected(QRect(QPoint(0, 0), job_.size));
    const auto& solid = job_.solid_bins[static_cast<std::size_t>(tile)];
    const bool veiled = job_.scene.ghost && !job_.ghost_bins[static_cast<std::size_t>(tile)].empty();
    if (solid.empty() && !veiled) {
        for (int y = part.top(); y <= part.bottom(); ++y)
            std::fill_n(line(y) + part.left(), part.width(), plain_);
        return;
    }
    fill_buffers(tile, part, veiled);
    job_.every_other_pixel && !veiled ? paint_every_other_pixel(part) : paint_pixels(part, veiled);
}

void TilePainter::paint_pixels(const QRect& part, bool veiled) {
    for (int y = part.top(); y <= part.bottom(); ++y)
        for (int x = part.left(); x <= part.right(); ++x)
            line(y)[x] = veiled ? veiled_pixel(x, y) : solid_pixel(x, y);
}

void TilePainter::paint_every_other_pixel(const QRect& part) {
    for (int y = part.top(); y <= part.bottom(); ++y)
        for (int x = part.left() + (part.left() + y) % 2; x <= part.right(); x += 2)
            line(y)[x] = solid_pixel(x, y);
    for (int y = part.top(); y <= part.bottom(); ++y)
        for (int x = part.left() + (part.left() + y + 1) % 2; x <= part.right(); x += 2)
            line(y)[x] = between(x, y, part);
}

/// Where the lines around a lit round run.
bool TilePainter::is_on_a_lit_seam(std::uint32_t id) const {
    const DrawnMesh& owner = job_.owner_of(id);
    if (!job_.scene.any_lit || owner.source.lit == nullptr) return false;
    const std::vector<float>& lit = *owner.source.lit;
    const std::uint32_t* corner = &owner.source.mesh->indices[3UL * (id - owner.first_id)];
    return lit[corner[0]] != lit[corner[1]] || lit[corner[0]] != lit[corner[2]];
}

/// Of one mesh, and of one colour where triangles have one all over.
bool TilePainter::are_of_one_yarn(std::uint32_t id, std::uint32_t other) const {
    const DrawnMesh& owner = job_.owner_of(id);
    if (id == other) return true;
    if (&owner != &job_.owner_of(other)) return false;
    const auto colour = [&owner](std::uint32_t of) -> const Vector3f& {
        return owner.colours[colour_vertex(*owner.source.mesh, of - owner.first_id)];
    };
    return !owner.fabric || colour(id) == colour(other);
}

/// The mean of the pixels beside this one, if they show the same surface.
QRgb TilePainter::between(int x, int y, const QRect& part) {
    const std::uint32_t id = solid_.id(x, y);
    if (id == DepthBuffer::none) return plain_;
    if (is_on_a_lit_seam(id)) return solid_pixel(x, y);
    const float nearness = solid_.nearness(x, y), alike = 4 * job_.pixel_angle() * nearness;
    int red = 0, green = 0, blue = 0, count = 0;
    for (const QPoint beside : {QPoint(x - 1, y), QPoint(x + 1, y), QPoint(x, y - 1), QPoint(x, y + 1)}) {
        if (!part.contains(beside)) continue;
        const std::uint32_t other = solid_.id(beside.x(), beside.y());
        if (other == DepthBuffer::none || !are_of_one_yarn(id, other) ||
            std::abs(solid_.nearness(beside.x(), beside.y()) - nearness) > alike)
            return solid_pixel(x, y);
        const QRgb colour = line(beside.y())[beside.x()];
        red += qRed(colour);
        green += qGreen(colour);
        blue += qBlue(colour);
        ++count;
    }
    return count < 2 ? solid_pixel(x, y) : qRgb(red / count, green / count, blue / count);
}

void TilePainter::fill_buffers(int tile, const QRect& part, bool veiled) {
    const int n = job_.samples;
    solid_.begin(part.left() * n, part.top() * n, part.width() * n, part.height() * n);
    for (const std::uint32_t id : job_.solid_bins[static_cast<std::size_t>(tile)]) {
        const DrawnMesh& owner = job_.owner_of(id);
        owner.screen.with_triangle(id - owner.first_id,
                                   [&](const ScreenPoint& a, const ScreenPoint& b, const ScreenPoint& c,
                                       std::uint32_t /*triangle*/) { solid_.fill(a, b, c, id); });
    }
    if (!veiled) return;
    veil_.begin(part.left() * n, part.top() * n, part.width() * n, part.height() * n);
    for (const std::uint32_t id : job_.ghost_bins[static_cast<std::size_t>(tile)])
        job_.ghost.front().with_triangle(
            id, [&](const ScreenPoint& a, const ScreenPoint& b, const ScreenPoint& c, std::uint32_t t) {
                veil_.fill(a, b, c, t);
            });
}

/// The middle of a sample, in pixels.
float TilePainter::middle(int sample) const {
    return (static_cast<float>(sample) + 0.5F) / static_cast<float>(job_.samples);
}

QRgb TilePainter::solid_pixel(int x, int y) {
    const int n = job_.samples;
    if (solid_.is_one(x * n, y * n, n)) {
        const std::uint32_t id = solid_.id(x * n, y * n);
        if (id == DepthBuffer::none) return plain_;
        return pixel(colour_at(job_, id, static_cast<float>(x) + 0.5F, static_cast<float>(y) + 0.5F), 1);
    }
    patches_.clear();
    for (int sy = y * n; sy < (y + 1) * n; ++sy)
        for (int sx = x * n; sx < (x + 1) * n; ++sx)
            patches_.add(solid_.id(sx, sy), solid_.nearness(sx, sy), middle(sx), middle(sy));
    Vector3f sum = Vector3f::Zero();
    float opacity = 0;
    for (const Patch& patch : patches_) {
        const auto samples = static_cast<float>(patch.samples);
        const bool there = patch.id != DepthBuffer::none;
        sum += samples * (there ? colour_at(job_, patch.id, patch.x / samples, patch.y / samples) : behind_);
        opacity += samples * (there ? 1 : behind_alpha_);
    }
    const auto all = static_cast<float>(n * n);
    return opacity > 0 || behind_alpha_ > 0 ? pixel(sum / all, opacity / all) : plain_;
}

/// The comparison surface is laid over in sRGB, as the graphics card does it.
QRgb TilePainter::veiled_pixel(int x, int y) const {
    const int n = job_.samples;
    Vector3f sum = Vector3f::Zero();
    float opacity = 0;
    for (int sy = y * n; sy < (y + 1) * n; ++sy) {
        for (int sx = x * n; sx < (x + 1) * n; ++sx) {
            const std::uint32_t id = solid_.id(sx, sy), over = veil_.id(sx, sy);
            const float at_x = middle(sx), at_y = middle(sy);
            const bool there = id != DepthBuffer::none;
            const Vector3f below = there ? levels_of(colour_at(job_, id, at_x, at_y)) : behind_levels_;
            const bool behind = veil_.nearness(sx, sy) < solid_.nearness(sx, sy);
            const float veil = over == DepthBuffer::none ? 0 : veil_opacity(job_, over, at_x, at_y, behind);
            sum += veil * veil_levels_ + (1 - veil) * below;
            opacity += veil + (1 - veil) * (there ? 1 : behind_alpha_);
        }
    }
    const auto all = static_cast<float>(n * n);
    const auto level = [all](float value) { return static_cast<int>(std::lround(value / all)); };
    return qRgba(level(sum.x()), level(sum.y()), level(sum.z()), level(255 * opacity));
}

}  // namespace roundwright::render
