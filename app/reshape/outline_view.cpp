#include "app/reshape/outline_view.h"

#include <algorithm>
#include <cmath>

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>

#include "app/kit/spoken_roles.h"
#include "app/kit/theme.h"
#include "core/base/units.h"
#include "render/wording/length_text.h"

namespace roundwright::app {
namespace {

constexpr double handle_radius = 5;

}  // namespace

OutlineView::OutlineView(const Preferences& preferences, QWidget* parent)
    : QWidget(parent), preferences_(preferences) {
    setMouseTracking(true);
    speak_as(*this, QAccessible::Graphic);
    setAccessibleName(tr("Outline from the side"));
    tell_handle();
    connect(&preferences_, &Preferences::units_changed, this, [this] {
        tell_handle();
        update();
    });
}

void OutlineView::set_starts_at_top(bool at_top) {
    starts_at_top_ = at_top;
    update();
}

void OutlineView::set_old(std::optional<Silhouette> outline) {
    old_ = std::move(outline);
    tell_handle();
    update();
}

void OutlineView::set_new(std::optional<Silhouette> outline) {
    new_ = std::move(outline);
    tell_handle();
    update();
}

void OutlineView::set_drawn(std::optional<Silhouette> outline) {
    drawn_ = std::move(outline);
    setFocusPolicy(drawn_ ? Qt::StrongFocus : Qt::NoFocus);
    const int last = drawn_ ? static_cast<int>(drawn_->points.size()) - 1 : -1;
    handle_ = std::min(handle_, last);
    if (handle_ < 0 && last >= 0) handle_ = (last + 1) / 2;
    tell_handle();
    update();
}

void OutlineView::set_handle(int handle) {
    const int last = drawn_ ? static_cast<int>(drawn_->points.size()) - 1 : -1;
    handle = std::clamp(handle, std::min(0, last), last);
    if (handle == handle_) return;
    handle_ = handle;
    tell_handle();
    update();
    Q_EMIT handle_changed(handle_);
}

QString OutlineView::handle_words() const {
    if (!drawn_ || handle_ < 0) return {};
    const Vec2& p = drawn_->points[static_cast<std::size_t>(handle_)];
    double low = p.y();
    for (const Vec2& q : drawn_->points) low = std::min(low, q.y());
    const QString where = tr("%1 across, %2 up")
                              .arg(length_text(2 * p.x(), preferences_.units()),
                                   length_text(p.y() - low, preferences_.units()));
    if (handle_ == 0) return tr("Start: %1").arg(where);
    if (handle_ + 1 == static_cast<int>(drawn_->points.size()) && p.x() <= 0)
        return tr("Closed end: %1").arg(where);
    return tr("Round %1: %2").arg(handle_).arg(where);
}

/// The handle in hand, and before any is, how large the outlines are.
void OutlineView::tell_handle() {
    QString words = handle_words();
    if (words.isEmpty()) words = outlines_words();
    if (words != accessibleDescription()) setAccessibleDescription(words);
}

QString OutlineView::outlines_words() const {
    const auto size = [this](const Silhouette& outline) {
        double wide = 0, low = outline.points.front().y(), high = low;
        for (const Vec2& p : outline.points) {
            wide = std::max(wide, 2 * p.x());
            low = std::min(low, p.y());
            high = std::max(high, p.y());
        }
        return tr("%1 across, %2 tall")
            .arg(length_text(wide, preferences_.units()), length_text(high - low, preferences_.units()));
    };
    const bool has_old = old_ && !old_->points.empty(), has_new = new_ && !new_->points.empty();
    if (has_old && has_new) return tr("Filled: %1. Dashed: %2.").arg(size(*new_), size(*old_));
    if (has_new) return tr("Filled: %1.").arg(size(*new_));
    return has_old ? tr("Dashed: %1.").arg(size(*old_)) : tr("No outline yet");
}

// --- where things are

OutlinePlacement OutlineView::placement() const {
    if (dragging_) return drag_placement_;  // the scale stays while something moves
    const auto placed = new_as_placed();
    const auto pointer = [](const std::optional<Silhouette>& outline) {
        return outline ? &*outline : nullptr;
    };
    return OutlinePlacement::of(size(), starts_at_top_, {pointer(old_), pointer(placed), pointer(drawn_)});
}

std::optional<Silhouette> OutlineView::new_as_placed() const {
    return new_ && drawn_ ? std::optional(middles_met(*new_, *drawn_)) : new_;
}

QPointF OutlineView::handle_position(int handle) const {
    return drawn_ ? placement().at(drawn_->points[static_cast<std::size_t>(handle)]) : QPointF();
}

// --- drawing

void OutlineView::draw_scale(QPainter& painter, const OutlinePlacement& here) const {
    const bool inches = preferences_.units() == LengthUnit::inches;
    double step = inches ? mm_per_inch / 2 : 10;
    while (step * here.pixels_per_mm < 24) step *= 2;
    painter.setPen(QPen(Theme::colours().line, 1));
    for (double x = std::fmod(here.axis.x(), step * here.pixels_per_mm); x < width();
         x += step * here.pixels_per_mm)
        painter.drawLine(QPointF(x, 0), QPointF(x, height()));
    for (double y = std::fmod(here.axis.y(), step * here.pixels_per_mm); y < height();
         y += step * here.pixels_per_mm)
        painter.drawLine(QPointF(0, y), QPointF(width(), y));
    painter.setPen(Theme::colours().quiet_text);
    const QString words = tr("one square: %1").arg(length_text(step, preferences_.units()));
    painter.drawText(rect().adjusted(8, 4, -8, -4), Qt::AlignLeft | Qt::AlignBottom, words);
}

void OutlineView::draw_new(QPainter& painter, const OutlinePlacement& here) const {
    const auto outline = new_as_placed();
    if (!outline) return;
    painter.setBrush(Theme::colours().soft_accent);
    painter.setPen(QPen(Theme::colours().accent, 2));
    painter.drawPath(here.both_sides(*outline));
    QColor colour = Theme::colours().accent;
    colour.setAlphaF(0.35F);
    painter.setPen(QPen(colour, 1));
    for (const Vec2& p : outline->points) {
        if (p.x() <= 0) continue;
        painter.drawLine(here.at(p), here.at(Vec2(-p.x(), p.y())));
    }
}

void OutlineView::draw_handles(QPainter& painter, const OutlinePlacement& here) const {
    const QColor accent = Theme::colours().accent;
    QPolygonF line;
    for (const Vec2& p : drawn_->points) line << here.at(p);
    painter.setPen(QPen(palette().color(QPalette::Text), 1.2));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(here.one_side(*drawn_));
    for (std::size_t i = 0; i < drawn_->points.size(); ++i) {
        const bool current = static_cast<int>(i) == handle_;
        painter.setPen(QPen(palette().color(QPalette::Text), 1.2));
        painter.setBrush(current ? accent : palette().color(QPalette::Base));
        const double radius = current ? handle_radius + 1.5 : handle_radius - 1;
        painter.drawEllipse(line[static_cast<qsizetype>(i)], radius, radius);
        if (!current || !hasFocus()) continue;
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(accent, 2));
        painter.drawEllipse(line[static_cast<qsizetype>(i)], radius + 4, radius + 4);
    }
}

void OutlineView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), palette().base());
    const OutlinePlacement here = placement();
    draw_scale(painter, here);
    draw_new(painter, here);
    if (old_) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(Theme::colours().quiet_text, 1.6, Qt::DashLine));
        painter.drawPath(here.both_sides(*old_));
    }
    if (drawn_) draw_handles(painter, here);
}

// --- mouse and keyboard

void OutlineView::mousePressEvent(QMouseEvent* event) {
    if (!drawn_ || event->button() != Qt::LeftButton) return;
    const int handle = placement().point_near(event->position(), *drawn_);
    if (handle < 0) return;
    set_handle(handle);
    drag_placement_ = placement();
    dragging_ = true;
    pressed_at_ = event->position();
    Q_EMIT drag_started();
}

void OutlineView::mouseMoveEvent(QMouseEvent* event) {
    if (dragging_) {
        Q_EMIT dragged(drag_placement_.way(pressed_at_, event->position()));
        return;
    }
    const bool on_handle = drawn_ && placement().point_near(event->position(), *drawn_) >= 0;
    setCursor(on_handle ? Qt::SizeAllCursor : Qt::ArrowCursor);
}

void OutlineView::mouseReleaseEvent(QMouseEvent*) {
    if (!dragging_) return;
    dragging_ = false;
    update();
    Q_EMIT drag_finished();
}

void OutlineView::step_handle(int by) {
    const int last = static_cast<int>(drawn_->points.size()) - 1;
    set_handle(std::clamp(handle_ + by, 0, last));
}

bool OutlineView::move_by_key(int key, Qt::KeyboardModifiers modifiers) {
    const double step = modifiers.testFlag(Qt::ShiftModifier) ? 5 : 1;
    const double upwards = starts_at_top_ ? -1 : 1;
    switch (key) {
        case Qt::Key_Left:
            Q_EMIT nudged(Vec2(-step, 0));
            return true;
        case Qt::Key_Right:
            Q_EMIT nudged(Vec2(step, 0));
            return true;
        case Qt::Key_PageUp:
            Q_EMIT nudged(Vec2(0, upwards * step));
            return true;
        case Qt::Key_PageDown:
            Q_EMIT nudged(Vec2(0, -upwards * step));
            return true;
        default:
            return false;
    }
}

void OutlineView::keyPressEvent(QKeyEvent* event) {
    if (!drawn_) return QWidget::keyPressEvent(event);
    if (!dragging_ && event->matches(QKeySequence::Undo)) return Q_EMIT undo_asked();
    if (!dragging_ && event->matches(QKeySequence::Redo)) return Q_EMIT redo_asked();
    const int upwards = starts_at_top_ ? -1 : 1;
    switch (event->key()) {
        case Qt::Key_Up:
            return step_handle(upwards);
        case Qt::Key_Down:
            return step_handle(-upwards);
        case Qt::Key_Home:
            return set_handle(0);
        case Qt::Key_End:
            return set_handle(static_cast<int>(drawn_->points.size()) - 1);
        case Qt::Key_Escape:
            if (!dragging_) break;
            dragging_ = false;
            Q_EMIT drag_cancelled();
            return;
        default:
            if (move_by_key(event->key(), event->modifiers())) return;
    }
    QWidget::keyPressEvent(event);
}

void OutlineView::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}

void OutlineView::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    update();
}

}  // namespace roundwright::app
