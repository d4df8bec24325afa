#include "render/raster/software_picture.h"

#include <algorithm>
#include <atomic>
#include <new>
#include <vector>

#include <QPainter>

#include "render/raster/drawing_job.h"
#include "render/raster/ground_shadow.h"
#include "render/raster/pile.h"
#include "render/raster/rim.h"
#include "render/raster/stitch_size.h"
#include "render/raster/tile_painter.h"

namespace roundwright::render {

namespace {

/// Shares the tiles among the processor's cores.
void paint_all(const DrawingJob& job, Lane lane, QImage& image) {
    const int tiles = job.tiles_across * job.tiles_down;
    std::atomic<int> next = 0;
    share_out(lane, [&] {
        TilePainter painter(job, image);
        for (int tile = next++; tile < tiles && !job.stop.stop_requested(); tile = next++)
            painter.paint(tile);
    });
}

std::vector<const Mesh*> meshes_of(const SoftwareScene& scene) {
    std::vector<const Mesh*> meshes;
    for (const ShadedMesh& shaded : scene.meshes) meshes.push_back(shaded.mesh);
    return meshes;
}

std::vector<float> ground_reached(const SoftwareScene& scene, const Camera& camera) {
    return reach_of_shadow(meshes_of(scene), camera);
}

QImage on_ground(const QImage& picture, const SoftwareScene& scene, const Camera& camera,
                 const QColor& background) {
    const std::vector<const Mesh*> meshes = meshes_of(scene);
    QImage whole(picture.size(), QImage::Format_ARGB32_Premultiplied);
    whole.fill(background);
    QPainter painter(&whole);
    painter.drawImage(0, 0, ground_shadow(meshes, camera));
    painter.drawImage(0, 0, picture);
    return whole;
}

}  // namespace

QImage draw_software_picture(const SoftwareScene& scene, Camera camera, QSize size, int samples,
                             const DrawingRun& run) {
    if (size.isEmpty()) return {};
    QImage image(size, QImage::Format_ARGB32_Premultiplied);
    if (image.isNull()) throw std::bad_alloc();  // Qt says it so
    camera.set_viewport(size.width(), size.height());
    DrawingJob job = prepared_job(scene, camera, size, std::clamp(samples, 1, 4));
    job.stop = run.stop;
    job.every_other_pixel = run.every_other_pixel && job.samples == 1;
    paint_all(job, run.lane, image);
    if (job.stop.stop_requested()) return {};
    return scene.rim ? with_rim(image, *scene.rim, scene.rim_px, scene.background) : image;
}

QImage picture_of(const StitchSurface& surface, const std::vector<ScenePart>& parts, ViewDirection direction,
                  QSize size, const QColor& background, Ground ground) {
    SoftwareScene scene;
    scene.background = ground == Ground::none ? background : QColor(Qt::transparent);
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
    const std::vector<float> shadowed =
        ground == Ground::none ? std::vector<float>{} : ground_reached(scene, camera);
    if (!shadowed.empty()) clouds.emplace_back(shadowed);
    camera.fit(clouds);
    const QImage picture = draw_software_picture(scene, camera, size, fine_samples);
    return ground == Ground::none ? picture : on_ground(picture, scene, camera, background);
}

}  // namespace roundwright::render
