#include "render/scene/software_picture.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <functional>
#include <future>
#include <thread>

#include "render/scene/corner_vertices.h"
#include "render/scene/depth_buffer.h"
#include "render/scene/fabric_picture.h"
#include "render/scene/pile.h"
#include "render/scene/screen_mesh.h"
#include "render/scene/shading.h"
#include "render/scene/stitch_size.h"

namespace roundwright::render {

namespace {

using Eigen::Vector3f;

constexpr int tile_pixels = 64;

Vector3f linear(const QColor& c) {
    return {to_linear(static_cast<float>(c.redF())), to_linear(static_cast<float>(c.greenF())),
            to_linear(static_cast<float>(c.blueF()))};
}

Vector3f corner(const std::vector<float>& values, std::uint32_t i) {
    return {values[3 * i], values[3 * i + 1], values[3 * i + 2]};
}

/// Both directions of the transfer function by table; colours come in 256 steps and leave in as many.
std::vector<Vector3f> linear_colours(const Mesh& mesh) {
    constexpr int steps = 1023;
    static const std::vector<float> table = [] {
        std::vector<float> values(steps + 1);
        for (int i = 0; i <= steps; ++i) values[i] = to_linear(static_cast<float>(i) / steps);
        return values;
    }();
    std::vector<Vector3f> out(mesh.colours.size() / 3);
    const auto at = [](float v) {
        return table[static_cast<std::size_t>(std::clamp(v, 0.0F, 1.0F) * steps + 0.5F)];
    };
    for (std::size_t i = 0; i < out.size(); ++i) {
        out[i] = {at(mesh.colours[3 * i]), at(mesh.colours[3 * i + 1]), at(mesh.colours[3 * i + 2])};
    }
    return out;
}

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

struct Prepared {
    ShadedMesh source;
    ScreenMesh screen;
    std::vector<Vector3f> colours;  ///< linear
    std::uint32_t first_id = 0;
    bool fabric = false;
};

/// Numbers of the triangles that reach into each tile.
using Bins = std::vector<std::vector<std::uint32_t>>;

/// What every tile needs to know.
struct Job {
    const SoftwareScene& scene;
    Camera camera;
    QSize size;
    int samples;
    int tiles_across;
    int tiles_down;
    std::vector<Prepared> meshes;
    Bins solid_bins;
    std::vector<ScreenMesh> ghost;  ///< one at most
    Bins ghost_bins;
    Eigen::Matrix3f to_eye;
    Vector3f ghost_colour;
    std::array<const FacePicture*, stitch_faces> faces{};
    const std::atomic<bool>* cancelled = nullptr;

    [[nodiscard]] bool is_cancelled() const { return cancelled != nullptr && *cancelled; }
    [[nodiscard]] float pixel_angle() const {
        return static_cast<float>(2 * camera.half_height() / size.height());
    }
};

/// The shares of a triangle's corners at the point where the eye's ray meets its plane.
Vector3f shares_at(const std::array<Vector3f, 3>& p, const Vector3f& ray) {
    const Vector3f side_b = p[1] - p[0], side_c = p[2] - p[0];
    const Vector3f h = ray.cross(side_c);
    const float determinant = side_b.dot(h);
    if (std::abs(determinant) < 1e-20F) return Vector3f::Constant(1.0F / 3);
    const float b = std::clamp(-p[0].dot(h) / determinant, 0.0F, 1.0F);
    const float c = std::clamp(ray.dot((-p[0]).cross(side_b)) / determinant, 0.0F, 1 - b);
    return {1 - b - c, b, c};
}

/// Through a point of the picture, in pixels.
Vector3f ray_at(const Job& job, float x, float y) {
    const auto w = static_cast<float>(job.size.width()), h = static_cast<float>(job.size.height());
    return {(2 * x / w - 1) * static_cast<float>(job.camera.half_width()),
            (1 - 2 * y / h) * static_cast<float>(job.camera.half_height()), -1};
}

/// How much `lit` changes across one pixel: the length of its gradient over the triangle's plane, seen at the
/// triangle's depth.
float lit_step(const std::array<Vector3f, 3>& p, const std::array<float, 3>& lit, float pixel_mm) {
    if (lit[0] == lit[1] && lit[1] == lit[2]) return 0;
    const float depth = -(p[0].z() + p[1].z() + p[2].z()) / 3;
    const auto flat = [depth](const Vector3f& v) -> Eigen::Vector2f {
        return Eigen::Vector2f(v.x() / -v.z(), v.y() / -v.z()) * depth;
    };
    const Eigen::Vector2f b = flat(p[1]) - flat(p[0]), c = flat(p[2]) - flat(p[0]);
    const float area = b.x() * c.y() - b.y() * c.x();
    if (std::abs(area) < 1e-12F) return 0;
    const float db = lit[1] - lit[0], dc = lit[2] - lit[0];
    const Eigen::Vector2f gradient((db * c.y() - dc * b.y()) / area, (dc * b.x() - db * c.x()) / area);
    return gradient.norm() * pixel_mm;
}

const Prepared& owner_of(const Job& job, std::uint32_t id) {
    std::size_t i = job.meshes.size() - 1;
    while (i > 0 && job.meshes[i].first_id > id) --i;
    return job.meshes[i];
}

/// Sets what the triangle's face shows at shares of its corners `p`. The gradient of a value f over a
/// triangle with sides b, c and n = b x c is (df_b (c x n) + df_c (n x b)) / n.n.
void add_fabric(ShadedPoint& point, const Job& job, const Mesh& mesh, std::uint32_t triangle,
                const std::array<Vector3f, 3>& p, const Vector3f& share, const ShadingSetup& setup) {
    const std::uint16_t* at = &mesh.places[6 * static_cast<std::size_t>(triangle)];
    constexpr auto unit = static_cast<float>(1 / Mesh::place_units);
    const auto u = [at](std::size_t k) { return unit * static_cast<float>(at[2 * k]); };
    const auto v = [at](std::size_t k) { return unit * static_cast<float>(at[2 * k + 1]); };
    const auto level = [&](const Vector3f& side) -> Vector3f {
        return side - point.normal * point.normal.dot(side);
    };
    const Vector3f b = level(p[1] - p[0]), c = level(p[2] - p[0]), plane = b.cross(c);
    const float area = std::max(plane.squaredNorm(), 1e-20F);
    const Vector3f along_b = c.cross(plane) / area, along_c = plane.cross(b) / area;
    point.across = (u(1) - u(0)) * along_b + (u(2) - u(0)) * along_c;
    point.up = (v(1) - v(0)) * along_b + (v(2) - v(0)) * along_c;
    const float facing = std::max(-point.normal.dot(point.position.normalized()), 0.0F);
    point.fabric = job.faces[mesh.faces[triangle]]->at(share[0] * u(0) + share[1] * u(1) + share[2] * u(2),
                                                       share[0] * v(0) + share[1] * v(1) + share[2] * v(2),
                                                       fabric_level(-point.position.z(), facing, setup));
}

/// Light from a triangle where the ray through a point of the picture meets it.
Vector3f colour_at(const Job& job, std::uint32_t id, float x, float y) {
    const Prepared& owner = owner_of(job, id);
    const Mesh& mesh = *owner.source.mesh;
    const std::uint32_t triangle = id - owner.first_id;
    const std::uint32_t* index = &mesh.indices[3 * static_cast<std::size_t>(triangle)];
    const auto& eye = owner.screen.eye_positions();
    const std::array<Vector3f, 3> p = {eye[index[0]], eye[index[1]], eye[index[2]]};
    const Vector3f share = shares_at(p, ray_at(job, x, y));
    ShadedPoint point;
    Vector3f normal = Vector3f::Zero();
    point.position = point.colour = normal;
    std::array<float, 3> lit{};
    for (int k = 0; k < 3; ++k) {
        const std::uint32_t i = index[k];
        point.position += share[k] * p[static_cast<std::size_t>(k)];
        if (!owner.fabric) point.colour += share[k] * owner.colours[i];
        normal += share[k] * corner(mesh.normals, i);
        if (owner.source.lit) lit[static_cast<std::size_t>(k)] = (*owner.source.lit)[i];
    }
    if (owner.fabric) point.colour = owner.colours[colour_vertex(mesh, triangle)];
    const bool away = (p[1] - p[0]).cross(p[2] - p[0]).dot(point.position) > 0;
    point.inside = away && !values_of(owner.source.finish).two_sided;
    point.normal = (job.to_eye * normal).normalized() * (point.inside ? -1.0F : 1.0F);
    const ShadingSetup setup{owner.source.finish, job.scene.any_lit && owner.source.lit != nullptr,
                             static_cast<float>(job.scene.stitch_mm), job.pixel_angle()};
    if (owner.fabric) add_fabric(point, job, mesh, triangle, p, share, setup);
    if (setup.any_lit) {
        point.lit = share[0] * lit[0] + share[1] * lit[1] + share[2] * lit[2];
        point.lit_step = lit_step(p, lit, -point.position.z() * setup.pixel_angle);
    }
    return shade(point, setup);
}

/// How much the comparison surface hides of what is there.
float veil_opacity(const Job& job, std::uint32_t id, float x, float y, bool behind) {
    const std::uint32_t* index = &job.scene.ghost->indices[3 * static_cast<std::size_t>(id)];
    const auto& eye = job.ghost.front().eye_positions();
    const std::array<Vector3f, 3> p = {eye[index[0]], eye[index[1]], eye[index[2]]};
    const Vector3f ray = ray_at(job, x, y);
    const Vector3f share = shares_at(p, ray);
    Vector3f normal = Vector3f::Zero();
    for (int k = 0; k < 3; ++k) normal += share[k] * corner(job.scene.ghost->normals, index[k]);
    return ghost_opacity(std::abs((job.to_eye * normal).normalized().dot(ray.normalized())), behind);
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

/// The samples of a pixel that one shading stands for.
struct Patch {
    std::uint32_t id = DepthBuffer::none;
    float nearness = 0;
    float x = 0, y = 0;  ///< sums
    int samples = 0;
};

/// What is seen through one pixel, each surface once: the picture of a fabric holds no more detail than
/// pixels do, so that only outlines and colours need several points.
class PixelPatches {
  public:
    explicit PixelPatches(const Job& job) : job_(job), alike_(4 * job.pixel_angle()) {}

    void clear() { count_ = 0; }
    void add(std::uint32_t id, float nearness, float x, float y) {
        Patch& patch = patches_[find(id, nearness)];
        patch.x += x;
        patch.y += y;
        ++patch.samples;
    }
    [[nodiscard]] const Patch* begin() const { return patches_.data(); }
    [[nodiscard]] const Patch* end() const { return patches_.data() + count_; }

  private:
    std::size_t find(std::uint32_t id, float nearness) {
        for (std::size_t k = 0; k < count_; ++k)
            if (patches_[k].id == id || is_like(patches_[k], id, nearness)) return k;
        patches_[count_] = {id, nearness, 0, 0, 0};
        return count_++;
    }
    [[nodiscard]] bool is_like(const Patch& patch, std::uint32_t id, float nearness) const {
        if (patch.id == DepthBuffer::none || id == DepthBuffer::none) return false;
        if (std::abs(patch.nearness - nearness) > alike_ * nearness) return false;
        const Prepared& owner = owner_of(job_, id);
        if (&owner != &owner_of(job_, patch.id)) return false;
        const auto vertex = [&](std::uint32_t of) {
            return colour_vertex(*owner.source.mesh, of - owner.first_id);
        };
        const std::uint32_t here = vertex(id), there = vertex(patch.id);
        return owner.colours[here] == owner.colours[there] &&
               (owner.source.lit == nullptr || (*owner.source.lit)[here] == (*owner.source.lit)[there]);
    }

    const Job& job_;
    float alike_;
    std::array<Patch, 16> patches_;
    std::size_t count_ = 0;
};

/// Draws a part of the picture after the other, each with buffers that fit the processor's cache.
class TilePainter {
  public:
    TilePainter(const Job& job, QImage& image)
        : job_(job), bytes_(image.bits()), stride_(image.bytesPerLine()), patches_(job) {
        behind_alpha_ = static_cast<float>(job.scene.background.alphaF());
        behind_ = linear(job.scene.background) * behind_alpha_;
        plain_ = pixel(behind_, behind_alpha_);
        behind_levels_ = behind_alpha_ * levels_of(linear(job.scene.background));
        veil_levels_ = levels_of(job.ghost_colour);
    }

    void paint(int tile) {
        const int left = tile % job_.tiles_across * tile_pixels, top = tile / job_.tiles_across * tile_pixels;
        const int right = std::min(left + tile_pixels, job_.size.width());
        const int bottom = std::min(top + tile_pixels, job_.size.height());
        const auto& solid = job_.solid_bins[static_cast<std::size_t>(tile)];
        const bool veiled = job_.scene.ghost && !job_.ghost_bins[static_cast<std::size_t>(tile)].empty();
        if (!solid.empty() || veiled) fill_buffers(tile, left, top, right, bottom, veiled);
        for (int y = top; y < bottom; ++y) {
            auto* line = reinterpret_cast<QRgb*>(bytes_ + y * stride_);
            for (int x = left; x < right; ++x)
                line[x] = solid.empty() && !veiled ? plain_ : veiled ? veiled_pixel(x, y) : solid_pixel(x, y);
        }
    }

  private:
    void fill_buffers(int tile, int left, int top, int right, int bottom, bool veiled) {
        const int n = job_.samples;
        solid_.begin(left * n, top * n, (right - left) * n, (bottom - top) * n);
        for (const std::uint32_t id : job_.solid_bins[static_cast<std::size_t>(tile)]) {
            const Prepared& owner = owner_of(job_, id);
            owner.screen.with_triangle(id - owner.first_id,
                                       [&](const ScreenPoint& a, const ScreenPoint& b, const ScreenPoint& c,
                                           std::uint32_t /*triangle*/) { solid_.fill(a, b, c, id); });
        }
        if (!veiled) return;
        veil_.begin(left * n, top * n, (right - left) * n, (bottom - top) * n);
        for (const std::uint32_t id : job_.ghost_bins[static_cast<std::size_t>(tile)])
            job_.ghost.front().with_triangle(
                id, [&](const ScreenPoint& a, const ScreenPoint& b, const ScreenPoint& c, std::uint32_t t) {
                    veil_.fill(a, b, c, t);
                });
    }

    /// The middle of a sample, in pixels.
    [[nodiscard]] float middle(int sample) const {
        return (static_cast<float>(sample) + 0.5F) / static_cast<float>(job_.samples);
    }

    QRgb solid_pixel(int x, int y) {
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
            sum +=
                samples * (there ? colour_at(job_, patch.id, patch.x / samples, patch.y / samples) : behind_);
            opacity += samples * (there ? 1 : behind_alpha_);
        }
        const auto all = static_cast<float>(n * n);
        return opacity > 0 || behind_alpha_ > 0 ? pixel(sum / all, opacity / all) : plain_;
    }

    /// The comparison surface is laid over in sRGB, as the graphics card does it.
    QRgb veiled_pixel(int x, int y) const {
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
                const float veil =
                    over == DepthBuffer::none ? 0 : veil_opacity(job_, over, at_x, at_y, behind);
                sum += veil * veil_levels_ + (1 - veil) * below;
                opacity += veil + (1 - veil) * (there ? 1 : behind_alpha_);
            }
        }
        const auto all = static_cast<float>(n * n);
        const auto level = [all](float value) { return static_cast<int>(std::lround(value / all)); };
        return qRgba(level(sum.x()), level(sum.y()), level(sum.z()), level(255 * opacity));
    }

    const Job& job_;
    uchar* bytes_;
    qsizetype stride_;
    float behind_alpha_ = 1;
    Vector3f behind_, behind_levels_, veil_levels_;
    QRgb plain_ = 0;
    DepthBuffer solid_, veil_;
    PixelPatches patches_;
};

/// Shares the tiles among the processor's cores.
void paint_all(const Job& job, QImage& image) {
    const int tiles = job.tiles_across * job.tiles_down;
    std::atomic<int> next = 0;
    const auto work = [&] {
        TilePainter painter(job, image);
        for (int tile = next++; tile < tiles && !job.is_cancelled(); tile = next++) painter.paint(tile);
    };
    const int workers = std::clamp(static_cast<int>(std::thread::hardware_concurrency()), 1, tiles);
    std::vector<std::future<void>> running;
    for (int i = 1; i < workers; ++i) running.push_back(std::async(std::launch::async, work));
    work();
    for (auto& worker : running) worker.get();
}

void put_in_bins(Bins& bins, const ScreenMesh& mesh, const Job& job, std::uint32_t first_id) {
    const auto tile_samples = static_cast<float>(tile_pixels * job.samples);
    const auto tile = [tile_samples](float sample, int tiles) {
        return std::clamp(static_cast<int>(sample / tile_samples), 0, tiles - 1);
    };
    const auto width = static_cast<float>(job.size.width() * job.samples);
    const auto height = static_cast<float>(job.size.height() * job.samples);
    mesh.for_each_triangle(
        [&](const ScreenPoint& a, const ScreenPoint& b, const ScreenPoint& c, std::uint32_t t) {
            const float left = std::min({a.x, b.x, c.x}), right = std::max({a.x, b.x, c.x});
            const float top = std::min({a.y, b.y, c.y}), bottom = std::max({a.y, b.y, c.y});
            if (right < 0 || bottom < 0 || left > width || top > height) return;
            for (int row = tile(top, job.tiles_down); row <= tile(bottom, job.tiles_down); ++row) {
                for (int column = tile(left, job.tiles_across); column <= tile(right, job.tiles_across);
                     ++column) {
                    auto& bin = bins[static_cast<std::size_t>(row * job.tiles_across + column)];
                    if (bin.empty() || bin.back() != first_id + t) bin.push_back(first_id + t);
                }
            }
        });
}

bool is_fabric(const Mesh& mesh) {
    return mesh.places.size() == 6 * mesh.triangle_count() && !mesh.places.empty();
}

Job prepare(const SoftwareScene& scene, const Camera& camera, QSize size, int samples) {
    const ViewAxes axes = camera.axes();
    const auto tiles = [](int pixels) { return (pixels + tile_pixels - 1) / tile_pixels; };
    Job job{scene, camera, size, samples, tiles(size.width()), tiles(size.height()), {}, {}, {},
            {},    {},     {},   {}};
    job.ghost_colour = ghost_colour(scene.background);
    job.to_eye << axes.right.cast<float>().transpose(), axes.up.cast<float>().transpose(),
        axes.back.cast<float>().transpose();
    const int width = size.width() * samples, height = size.height() * samples;
    job.solid_bins.resize(static_cast<std::size_t>(job.tiles_across * job.tiles_down));
    job.ghost_bins.resize(job.solid_bins.size());
    std::uint32_t next = 0;
    for (const ShadedMesh& mesh : scene.meshes) {
        const bool fabric = is_fabric(*mesh.mesh);
        job.meshes.push_back({mesh, ScreenMesh(*mesh.mesh, camera, width, height, fabric),
                              linear_colours(*mesh.mesh), next, fabric});
        put_in_bins(job.solid_bins, job.meshes.back().screen, job, next);
        next += static_cast<std::uint32_t>(mesh.mesh->triangle_count());
        if (!fabric) continue;
        for (const std::uint8_t face : mesh.mesh->faces)
            if (!job.faces[face]) job.faces[face] = &FacePicture::of(static_cast<StitchFace>(face));
    }
    if (scene.ghost) {
        job.ghost.emplace_back(*scene.ghost, camera, width, height, false);
        put_in_bins(job.ghost_bins, job.ghost.back(), job, 0);
    }
    return job;
}

}  // namespace

QImage draw_software_picture(const SoftwareScene& scene, Camera camera, QSize size, int samples,
                             const std::atomic<bool>* cancelled) {
    if (size.isEmpty()) return {};
    QImage image(size, QImage::Format_ARGB32_Premultiplied);
    camera.set_viewport(size.width(), size.height());
    Job job = prepare(scene, camera, size, std::clamp(samples, 1, 4));
    job.cancelled = cancelled;
    paint_all(job, image);
    return job.is_cancelled() ? QImage() : image;
}

QImage picture_of(const StitchSurface& surface, const std::vector<ScenePart>& parts, ViewDirection direction,
                  QSize size, const QColor& background) {
    SoftwareScene scene;
    scene.background = background;
    scene.stitch_mm = stitch_size_mm(surface);
    scene.meshes.push_back({&surface.mesh, nullptr, Finish::yarn});
    const Mesh pile = pile_mesh(surface);
    if (pile.triangle_count() > 0) scene.meshes.push_back({&pile, nullptr, Finish::pile});
    std::vector<PointCloud> clouds = {surface.mesh.positions};
    for (const ScenePart& part : parts) {
        scene.meshes.push_back({&part.mesh, nullptr, part.finish});
        clouds.emplace_back(part.mesh.positions);
    }
    Camera camera;
    camera.set_viewport(size.width(), size.height());
    camera.look_from(direction);
    camera.fit(clouds);
    return draw_software_picture(scene, camera, size, fine_samples);
}

}  // namespace roundwright::render
