#include "app/reshape/hand_sculpting.h"

#include "app/reshape/outline_view.h"

namespace roundwright::app {

HandSculpting::HandSculpting(OutlineView& view, std::shared_ptr<const PieceForm> form, QObject* parent)
    : QObject(parent), view_(view), form_(std::move(form)) {
    connect(&view_, &OutlineView::drag_started, this, &HandSculpting::begin_drag);
    connect(&view_, &OutlineView::dragged, this, &HandSculpting::drag);
    connect(&view_, &OutlineView::drag_cancelled, this, [this] { draw(drag_base_); });
    connect(&view_, &OutlineView::nudged, this, &HandSculpting::nudge);
}

bool HandSculpting::start_over() {
    if (!start_ && form_->usable()) start_ = sculpt_start(*form_);
    if (!start_) return false;
    shape_.reset();
    draw(start_->outline);
    return true;
}

void HandSculpting::stop() { view_.set_drawn(std::nullopt); }

void HandSculpting::set_tidiness(double tidiness) {
    tidiness_ = tidiness;
    if (view_.drawn()) draw(Silhouette(*view_.drawn()));
}

void HandSculpting::begin_drag() { drag_base_ = *view_.drawn(); }

void HandSculpting::drag(const Vec2& by_mm) {
    draw(dragged(drag_base_, static_cast<std::size_t>(view_.handle()), by_mm, reach_mm_));
}

void HandSculpting::nudge(const Vec2& by_mm) {
    begin_drag();
    drag(by_mm);
}

void HandSculpting::draw(const Silhouette& outline) {
    view_.set_drawn(outline);
    const Sculpted made = sculpt(*start_, outline, tidiness_, shape_ ? &*shape_ : nullptr);
    if (made.usable) shape_ = made.shape;
    Q_EMIT sculpted(made);
}

}  // namespace roundwright::app
