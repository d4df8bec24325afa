#include "app/shape/shape_actions.h"

#include <utility>

#include "app/kit/action_keys.h"
#include "app/kit/action_maker.h"
#include "render/scene/scene_view.h"

namespace roundwright::app {

ShapeActions::ShapeActions(DocumentSession& session, QWidget* window)
    : QObject(window),
      front(make_action(window, "shape.front")),
      side(make_action(window, "shape.side")),
      top(make_action(window, "shape.top")),
      back(make_action(window, "shape.back")),
      bottom(make_action(window, "shape.bottom")),
      three_quarter(make_action(window, "shape.three-quarter")),
      fit(make_action(window, "shape.fit")),
      zoom_in(make_action(window, "shape.zoom-in")),
      zoom_out(make_action(window, "shape.zoom-out")),
      turn_left(make_action(window, "shape.turn-left")),
      turn_right(make_action(window, "shape.turn-right")),
      turn_up(make_action(window, "shape.turn-up")),
      turn_down(make_action(window, "shape.turn-down")),
      stuffed(make_choice(window, "shape.stuffed")),
      every_stitch(make_choice(window, "shape.every-stitch")),
      session_(session) {
    connect(stuffed, &QAction::triggered, this, [this](bool on) { session_.set_shows_unstuffed(!on); });
    every_stitch->setChecked(session_.preferences().every_stitch());
    every_stitch->setStatusTip(tr("Off: the round shape alone, which is there at once"));
    connect(every_stitch, &QAction::toggled, &session_.preferences(), &Preferences::set_every_stitch);
    connect(&session_.preferences(), &Preferences::every_stitch_changed, every_stitch, &QAction::setChecked);
    connect(&session_, &DocumentSession::toy_changed, this, &ShapeActions::show_stuffed);
    connect(&session_, &DocumentSession::current_piece_changed, this, &ShapeActions::show_stuffed);
    connect(&ActionKeys::instance(), &ActionKeys::changed, this, &ShapeActions::show_stuffed);
    show_stuffed();

    using render::ViewDirection;
    const std::pair<QAction*, ViewDirection> views[] = {
        {front, ViewDirection::front},   {side, ViewDirection::side},
        {top, ViewDirection::top},       {back, ViewDirection::back},
        {bottom, ViewDirection::bottom}, {three_quarter, ViewDirection::three_quarter}};
    for (const auto& [action, direction] : views) {
        connect(action, &QAction::triggered, this, [this, direction = direction] {
            if (scene_) scene_->look_from(direction);
        });
    }
    connect(fit, &QAction::triggered, this, [this] {
        if (scene_) scene_->fit();
    });
    const std::pair<QAction*, double> zooms[] = {{zoom_in, 1.2}, {zoom_out, 1 / 1.2}};
    for (const auto& [action, factor] : zooms) {
        connect(action, &QAction::triggered, this, [this, factor = factor] {
            if (scene_) scene_->zoom(factor);
        });
    }
    constexpr double step = 15;  // degrees
    const std::tuple<QAction*, double, double> turns[] = {
        {turn_left, -step, 0}, {turn_right, step, 0}, {turn_up, 0, step}, {turn_down, 0, -step}};
    for (const auto& [action, yaw, pitch] : turns) {
        connect(action, &QAction::triggered, this, [this, yaw = yaw, pitch = pitch] {
            if (scene_) scene_->turn(yaw, pitch);
        });
    }
}

/// A piece without stuffing has no other look to choose.
void ShapeActions::show_stuffed() {
    const Piece* piece = session_.piece();
    const bool has_stuffing = piece == nullptr || piece->area_stretch > 0;
    stuffed->setEnabled(has_stuffing);
    stuffed->setChecked(has_stuffing && !session_.shows_unstuffed());
    stuffed->setStatusTip(has_stuffing ? tr("Off: the piece as it is before stuffing")
                                       : tr("This piece is not stuffed: see Stuffing"));
    stuffed->setToolTip(has_stuffing
                            ? tr("Stuffed (%1)").arg(ActionKeys::instance().shown(stuffed->objectName()))
                            : stuffed->statusTip());
}

void ShapeActions::fill(QMenu* menu) const {
    menu->addActions({front, side, top, back, bottom, three_quarter});
    menu->addSeparator();
    menu->addActions({fit, zoom_in, zoom_out});
    menu->addSeparator();
    menu->addActions({turn_left, turn_right, turn_up, turn_down});
    menu->addSeparator();
    menu->addActions({stuffed, every_stitch});
}

}  // namespace roundwright::app
