#include "app/reshape/preview_stack.h"

#include <QVBoxLayout>

#include "app/kit/spoken_roles.h"
#include "app/kit/theme.h"
#include "app/session/background_solver.h"
#include "render/scene/scene_view.h"
#include "render/scene/stepping_ground.h"

namespace roundwright::app {

PreviewStack::PreviewStack(const Preferences& preferences, QWidget* parent)
    : QStackedWidget(parent), outline_(new OutlineView(preferences)), fabric_(new QWidget) {
    addWidget(outline_);
    addWidget(fabric_);
    auto* layout = new QVBoxLayout(fabric_);
    layout->setContentsMargins(0, 0, 0, 0);
    connect(&task_, &render::Background::failed, this,
            [this](render::Background::Ticket, const QString& why) {
                setCurrentIndex(0);
                Q_EMIT failed(why);
            });
}

void PreviewStack::set_shows_fabric(bool fabric) {
    if (fabric && scene_ == nullptr) {
        scene_ = render::make_scene_view(fabric_);
        speak_as_picture(*scene_->widget(), tr("The new piece, with the old one behind it"));
        render::set_stepping_ground(*scene_, Theme::colours().scene);
        fabric_->layout()->addWidget(scene_->widget());
    }
    setCurrentIndex(fabric ? 1 : 0);
    if (fabric) draw_fabric();
}

void PreviewStack::set_piece(std::shared_ptr<const Toy> toy, std::size_t piece) {
    toy_ = std::move(toy);
    piece_ = piece;
    if (shows_fabric()) draw_fabric();
}

void PreviewStack::draw_fabric() {
    if (!toy_) return;
    SolveRequest request;
    request.toy = toy_;
    request.piece = piece_;
    request.surface_wanted = true;
    request.most_triangles = scene_->comfortable_triangles();
    task_.start_latest(render::Lane::longer, [this, request](const render::TaskRun& run) -> render::Delivery {
        const SolveResult result = solve_request(request, run.stop);
        if (!result.surface) return {};
        return [this, surface = result.surface] { take(*surface); };
    });
}

void PreviewStack::take(StitchSurface surface) {
    scene_->set_surface(std::move(surface));
    if (old_surface_) scene_->set_ghost(old_surface_->mesh);
    scene_->fit();
}

}  // namespace roundwright::app
