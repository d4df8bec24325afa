#include "app/shape/shape_arrival.h"

#include <algorithm>
#include <utility>

#include "app/kit/look.h"

namespace roundwright::app {
namespace {

constexpr int slide_ms = 180;
constexpr int tick_ms = 30;
/// Less is not seen to jump.
constexpr double least_slide_mm = 0.05;
/// More is another shape, as of a piece sewn flat, and no way between the two is one of fabric.
constexpr double most_slide_mm = 25;
/// Copying more for each picture would hold up the window.
constexpr std::size_t most_vertices_slid = 150'000;

}  // namespace

bool ShapeArrival::is_finer_of_the_same(const PieceStudy& study) const {
    return study_ && study.shape->round_solved && study.shape->round_solved == study_->shape &&
           study.stitches == study_->stitches;
}

void ShapeArrival::show(render::SceneView& scene, const std::shared_ptr<const StitchSurface>& surface,
                        const std::shared_ptr<const PieceStudy>& study) {
    if (surface == shown_ && scene_ == &scene) return;  // it is there, or on its way
    const auto before = std::exchange(shown_, surface);
    const bool finer = study && before && is_finer_of_the_same(*study);
    study_ = study;
    scene_ = &scene;
    ticks_.stop();
    blend_.reset();
    const bool slides = finer && !less_motion() && surface->mesh.vertex_count() <= most_vertices_slid;
    if (slides) blend_ = SurfaceBlend::between(*before, surface);
    if (blend_ && (blend_->farthest_mm() < least_slide_mm || blend_->farthest_mm() > most_slide_mm))
        blend_.reset();
    if (!blend_) return scene.share_surface(surface);
    since_.start();
    ticks_.callOnTimeout(this, &ShapeArrival::slide, Qt::UniqueConnection);
    ticks_.start(tick_ms);
    slide();
}

void ShapeArrival::slide() {
    if (!blend_) return;
    const double share =
        less_motion() ? 1.0 : std::min(1.0, static_cast<double>(since_.elapsed()) / slide_ms);
    scene_->share_surface(blend_->at(share * share * (3 - 2 * share)));
    if (share < 1) return;
    ticks_.stop();
    blend_.reset();
}

}  // namespace roundwright::app
