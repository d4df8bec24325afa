#include "app/reshape/hand_sculpting.h"

#include "app/reshape/outline_view.h"

namespace roundwright::app {

HandSculpting::HandSculpting(OutlineView& view, std::shared_ptr<const PieceForm> form, QObject* parent)
    : QObject(parent), view_(view), form_(std::move(form)) {
    connect_view();
}

void HandSculpting::connect_view() {
    connect(&view_, &OutlineView::drag_started, this, [this] {
        nudged_handle_ = -1;
        begin_drag();
    });
    connect(&view_, &OutlineView::dragged, this, &HandSculpting::drag);
    connect(&view_, &OutlineView::drag_cancelled, this, &HandSculpting::cancel_drag);
    connect(&view_, &OutlineView::nudged, this, &HandSculpting::nudge);
    connect(&view_, &OutlineView::undo_asked, this, [this] { step(before_, after_); });
    connect(&view_, &OutlineView::redo_asked, this, [this] { step(after_, before_); });
}

bool HandSculpting::start_over() {
    if (!start_ && form_->usable() && is_of_revolution(form_->fidelity)) start_ = sculpt_start(*form_);
    if (!start_) return false;
    if (view_.drawn()) begin_drag();
    nudged_handle_ = -1;
    shape_.reset();
    draw(start_->outline);
    return true;
}

void HandSculpting::stop() {
    before_.clear();
    after_.clear();
    view_.set_drawn(std::nullopt);
}

void HandSculpting::set_tidiness(double tidiness) {
    tidiness_ = tidiness;
    if (view_.drawn()) draw(Silhouette(*view_.drawn()));
}

void HandSculpting::begin_drag() {
    drag_base_ = *view_.drawn();
    before_.push_back(drag_base_);
    after_.clear();
}

void HandSculpting::drag(const Vec2& by_mm) {
    draw(dragged(drag_base_, static_cast<std::size_t>(view_.handle()), by_mm, reach_mm_));
}

void HandSculpting::cancel_drag() {
    before_.pop_back();
    draw(drag_base_);
}

void HandSculpting::nudge(const Vec2& by_mm) {
    if (nudged_handle_ != view_.handle()) begin_drag();
    nudged_handle_ = view_.handle();
    drag_base_ = *view_.drawn();
    drag(by_mm);
}

void HandSculpting::step(std::vector<Silhouette>& from, std::vector<Silhouette>& to) {
    if (from.empty()) return;
    nudged_handle_ = -1;
    to.push_back(*view_.drawn());
    const Silhouette outline = std::move(from.back());
    from.pop_back();
    draw(outline);
}

void HandSculpting::draw(const Silhouette& outline) {
    view_.set_drawn(outline);
    const Sculpted made = sculpt(*start_, outline, tidiness_, shape_ ? &*shape_ : nullptr);
    if (made.usable) shape_ = made.shape;
    Q_EMIT sculpted(made);
}

}  // namespace roundwright::app
