#include "render/raster/software_picture.h"

#include <algorithm>
#include <future>
#include <thread>
#include <vector>

#include "render/raster/drawing_job.h"
#include "render/raster/pile.h"
#include "render/raster/stitch_size.h"
#include "render/raster/tile_painter.h"

namespace roundwright::render {

namespace {

/// Shares the tiles among the processor's cores.
void paint_all(const DrawingJob& job, QImage& image) {
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

}  // namespace

QImage draw_software_picture(const SoftwareScene& scene, Camera camera, QSize size, int samples,
                             const std::atomic<bool>* cancelled) {
    if (size.isEmpty()) return {};
    QImage image(size, QImage::Format_ARGB32_Premultiplied);
    camera.set_viewport(size.width(), size.height());
    DrawingJob job = prepared_job(scene, camera, size, std::clamp(samples, 1, 4));
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
