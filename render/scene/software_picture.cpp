#include "render/scene/software_picture.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <functional>
#include <future>
#include <thread>

#include "render/scene/depth_buffer.h"
#include "render/scene/openness.h"
#include "render/scene/shading.h"

namespace roundwright::render {

namespace {

using Eigen::Vector3f;

struct Prepared {
    ShadedMesh source;
    std::vector<Vector3f> eye_positions;
    std::vector<Vector3f> colours;  ///< linear
    std::uint32_t first_id = 0;
};

/// What every row needs to know.
struct Job {
    const SoftwareScene& scene;
    Camera camera;
    QSize size;
    int samples;
    std::vector<Prepared> meshes;
    std::vector<Vector3f> ghost;
    Eigen::Matrix3f to_eye;
    Vector3f ghost_colour;
    DepthBuffer solid;
    DepthBuffer veil;
    const std::atomic<bool>* cancelled = nullptr;

    [[nodiscard]] bool is_cancelled() const { return cancelled != nullptr && *cancelled; }
};

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

/// The shares of a triangle's corners at the point where the eye's ray through a sample meets its plane.
Vector3f shares_at(const std::array<Vector3f, 3>& p, const Vector3f& ray) {
    const Vector3f side_b = p[1] - p[0], side_c = p[2] - p[0];
    const Vector3f h = ray.cross(side_c);
    const float determinant = side_b.dot(h);
    if (std::abs(determinant) < 1e-20F) return Vector3f::Constant(1.0F / 3);
    const float b = std::clamp(-p[0].dot(h) / determinant, 0.0F, 1.0F);
    const float c = std::clamp(ray.dot((-p[0]).cross(side_b)) / determinant, 0.0F, 1 - b);
    return {1 - b - c, b, c};
}

Vector3f ray_at(const Job& job, int x, int y) {
    const auto w = static_cast<float>(job.solid.width()), h = static_cast<float>(job.solid.height());
    return {(2 * (static_cast<float>(x) + 0.5F) / w - 1) * static_cast<float>(job.camera.half_width()),
            (1 - 2 * (static_cast<float>(y) + 0.5F) / h) * static_cast<float>(job.camera.half_height()), -1};
}

float pixel_angle(const Job& job) {
    return static_cast<float>(2 * job.camera.half_height() / job.size.height());
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

Vector3f colour_at(const Job& job, int x, int y) {
    const std::uint32_t id = job.solid.id(x, y);
    const Prepared& owner = owner_of(job, id);
    const Mesh& mesh = *owner.source.mesh;
    const std::uint32_t* index = &mesh.indices[3 * static_cast<std::size_t>(id - owner.first_id)];
    const std::array<Vector3f, 3> p = {owner.eye_positions[index[0]], owner.eye_positions[index[1]],
                                       owner.eye_positions[index[2]]};
    const Vector3f share = shares_at(p, ray_at(job, x, y));
    ShadedPoint point;
    Vector3f normal = Vector3f::Zero();
    point.position = point.place = point.colour = normal;
    point.openness = owner.source.openness ? 0 : 1;
    std::array<float, 3> lit{};
    for (int k = 0; k < 3; ++k) {
        const std::uint32_t i = index[k];
        point.position += share[k] * p[static_cast<std::size_t>(k)];
        point.place += share[k] * corner(mesh.positions, i);
        point.colour += share[k] * owner.colours[i];
        normal += share[k] * corner(mesh.normals, i);
        if (owner.source.openness) point.openness += share[k] * (*owner.source.openness)[i];
        if (owner.source.lit) lit[static_cast<std::size_t>(k)] = (*owner.source.lit)[i];
    }
    const Vector3f face = (p[1] - p[0]).cross(p[2] - p[0]);
    point.inside = face.dot(point.position) > 0;
    point.normal = (job.to_eye * normal).normalized() * (point.inside ? -1.0F : 1.0F);
    ShadingSetup setup{owner.source.finish, job.scene.any_lit && owner.source.lit != nullptr,
                       static_cast<float>(owner.source.grain_per_mm), pixel_angle(job), job.to_eye};
    if (setup.any_lit) {
        point.lit = share[0] * lit[0] + share[1] * lit[1] + share[2] * lit[2];
        point.lit_step = lit_step(p, lit, -point.position.z() * setup.pixel_angle);
    }
    return shade(point, setup).cwiseMin(1.0F);
}

/// The comparison surface over what is there: colour premultiplied, opacity.
struct Veil {
    Vector3f colour;
    float opacity;
};

Veil veil_at(const Job& job, int x, int y) {
    const std::uint32_t id = job.veil.id(x, y);
    if (id == DepthBuffer::none) return {Vector3f::Zero(), 0};
    const std::uint32_t* index = &job.scene.ghost->indices[3 * static_cast<std::size_t>(id)];
    const std::array<Vector3f, 3> p = {job.ghost[index[0]], job.ghost[index[1]], job.ghost[index[2]]};
    const Vector3f ray = ray_at(job, x, y);
    const Vector3f share = shares_at(p, ray);
    Vector3f normal = Vector3f::Zero();
    for (int k = 0; k < 3; ++k) normal += share[k] * corner(job.scene.ghost->normals, index[k]);
    const float facing = std::abs((job.to_eye * normal).normalized().dot(ray.normalized()));
    const bool behind = job.veil.nearness(x, y) < job.solid.nearness(x, y);
    const float opacity = ghost_opacity(facing, behind);
    return {opacity * job.ghost_colour, opacity};
}

QRgb pixel(const Vector3f& premultiplied, float opacity) {
    const auto level = [opacity](float linear_value) {
        return static_cast<int>(
            std::lround(255 * opacity * to_srgb(opacity > 0 ? linear_value / opacity : 0)));
    };
    return qRgba(level(premultiplied.x()), level(premultiplied.y()), level(premultiplied.z()),
                 static_cast<int>(std::lround(255 * opacity)));
}

void draw_rows(Job& job, QImage& image, int top, int bottom) {
    const int n = job.samples;
    for (const Prepared& mesh : job.meshes) {
        if (job.is_cancelled()) return;
        job.solid.draw(*mesh.source.mesh, mesh.eye_positions, job.camera, mesh.first_id, top * n, bottom * n);
    }
    if (job.scene.ghost) job.veil.draw(*job.scene.ghost, job.ghost, job.camera, 0, top * n, bottom * n);
    const auto behind_alpha = static_cast<float>(job.scene.background.alphaF());
    const Vector3f behind = linear(job.scene.background) * behind_alpha;
    const QRgb plain = pixel(behind, behind_alpha);
    for (int y = top; y < bottom && !job.is_cancelled(); ++y) {
        auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
        for (int x = 0; x < job.size.width(); ++x) {
            Vector3f sum = Vector3f::Zero();
            float opacity = 0;
            bool seen = false;
            for (int s = 0; s < n * n; ++s) {
                const int sx = x * n + s % n, sy = y * n + s / n;
                const bool solid = job.solid.id(sx, sy) != DepthBuffer::none;
                const Veil veil = job.scene.ghost ? veil_at(job, sx, sy) : Veil{Vector3f::Zero(), 0};
                const Vector3f below = solid ? colour_at(job, sx, sy) : behind;
                sum += veil.colour + (1 - veil.opacity) * below;
                opacity += veil.opacity + (1 - veil.opacity) * (solid ? 1 : behind_alpha);
                seen = seen || solid || veil.opacity > 0;
            }
            const auto all = static_cast<float>(n * n);
            line[x] = seen ? pixel(sum / all, opacity / all) : plain;
        }
    }
}

/// Splits the rows among the processor's cores.
void in_bands(int rows, const std::function<void(int, int)>& work) {
    const int bands =
        std::clamp(static_cast<int>(std::thread::hardware_concurrency()), 1, std::max(1, rows / 16));
    std::vector<std::future<void>> running;
    for (int i = 1; i < bands; ++i) {
        running.push_back(std::async(std::launch::async, work, rows * i / bands, rows * (i + 1) / bands));
    }
    work(0, rows / bands);
    for (auto& band : running) band.get();
}

Job prepare(const SoftwareScene& scene, const Camera& camera, QSize size, int samples) {
    const ViewAxes axes = camera.axes();
    Job job{scene,
            camera,
            size,
            samples,
            {},
            {},
            {},
            ghost_colour(scene.background),
            DepthBuffer(size.width() * samples, size.height() * samples),
            scene.ghost ? DepthBuffer(size.width() * samples, size.height() * samples) : DepthBuffer(1, 1)};
    job.to_eye << axes.right.cast<float>().transpose(), axes.up.cast<float>().transpose(),
        axes.back.cast<float>().transpose();
    std::uint32_t next = 0;
    for (const ShadedMesh& mesh : scene.meshes) {
        job.meshes.push_back(
            {mesh, DepthBuffer::in_eye_frame(*mesh.mesh, camera), linear_colours(*mesh.mesh), next});
        next += static_cast<std::uint32_t>(mesh.mesh->triangle_count());
    }
    if (scene.ghost) job.ghost = DepthBuffer::in_eye_frame(*scene.ghost, camera);
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
    in_bands(size.height(), [&](int top, int bottom) { draw_rows(job, image, top, bottom); });
    return job.is_cancelled() ? QImage() : image;
}

QImage picture_of(const StitchSurface& surface, const std::vector<ScenePart>& parts, ViewDirection direction,
                  QSize size, const QColor& background) {
    const double stitch = stitch_size_mm(surface);
    const std::vector<float> open = openness(surface.mesh, hollow_scale(stitch));
    SoftwareScene scene;
    scene.background = background;
    scene.meshes.push_back({&surface.mesh, &open, nullptr, Finish::yarn, grain_per_mm(stitch)});
    std::vector<PointCloud> clouds = {surface.mesh.positions};
    for (const ScenePart& part : parts) {
        scene.meshes.push_back({&part.mesh, nullptr, nullptr, part.finish, grain_per_mm(stitch)});
        clouds.emplace_back(part.mesh.positions);
    }
    Camera camera;
    camera.set_viewport(size.width(), size.height());
    camera.look_from(direction);
    camera.fit(clouds);
    return draw_software_picture(scene, camera, size, 2);
}

}  // namespace roundwright::render
