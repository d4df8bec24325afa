#include "app/reshape/outline_view.h"

#include <algorithm>
#include <cmath>

#include <QAccessible>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>

#include "app/session/length_text.h"
#include "app/window/theme.h"
#include "core/base/units.h"

namespace roundwright::app {
namespace {

constexpr double margin = 28;
constexpr double handle_radius = 5;
constexpr double reach_pixels = 14;  // a press this near takes a handle

struct Reach {
    double radius = 1;
    double low = 0;
    double high = 1;
};

void take_in(Reach& reach, bool& first, const std::optional<Silhouette>& outline) {
    if (!outline) return;
    for (const Vec2& p : outline->points) {
        reach.radius = first ? p.x() : std::max(reach.radius, p.x());
        reach.low = first ? p.y() : std::min(reach.low, p.y());
        reach.high = first ? p.y() : std::max(reach.high, p.y());
        first = false;
    }
}

}  // namespace

OutlineView::OutlineView(const Preferences& preferences, QWidget* parent)
    : QWidget(parent), preferences_(preferences) {
    setMouseTracking(true);
    setAccessibleName(tr("Outline from the side"));
    connect(&preferences_, &Preferences::units_changed, this, [this] { update(); });
}

void OutlineView::set_starts_at_top(bool at_top) {
    starts_at_top_ = at_top;
    update();
}

void OutlineView::set_old(std::optional<Silhouette> outline) {
    old_ = std::move(outline);
    update();
}

void OutlineView::set_new(std::optional<Silhouette> outline) {
    new_ = std::move(outline);
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

void OutlineView::tell_handle() {
    const QString words = handle_words();
    if (words == accessibleDescription()) return;
    setAccessibleDescription(words);
    if (!hasFocus()) return;
    QAccessibleEvent event(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
}

// --- where things are

OutlineView::View OutlineView::view() const {
    if (dragging_) return drag_view_;  // the scale stays while something moves
    Reach reach;
    bool first = true;
    for (const auto* outline : {&old_, &new_, &drawn_}) take_in(reach, first, *outline);
    const double wide = std::max(2 * reach.radius, 1.0);
    const double tall = std::max(reach.high - reach.low, 1.0);
    View view;
    view.pixels_per_mm = std::min((width() - 2 * margin) / wide, (height() - 2 * margin) / tall);
    view.pixels_per_mm = std::max(view.pixels_per_mm, 0.01);
    view.up = starts_at_top_ ? 1 : -1;
    const double middle = (reach.low + reach.high) / 2;
    view.axis = QPointF(width() / 2.0, height() / 2.0 - view.up * middle * view.pixels_per_mm);
    return view;
}

QPointF OutlineView::place(const View& view, const Vec2& point) const {
    return view.axis + QPointF(point.x(), view.up * point.y()) * view.pixels_per_mm;
}

QPointF OutlineView::handle_position(int handle) const {
    return drawn_ ? place(view(), drawn_->points[static_cast<std::size_t>(handle)]) : QPointF();
}

QPolygonF OutlineView::closed_outline(const View& view, const Silhouette& outline) const {
    QPolygonF polygon;
    for (const Vec2& p : outline.points) polygon << place(view, p);
    for (auto p = outline.points.rbegin(); p != outline.points.rend(); ++p)
        polygon << place(view, Vec2(-p->x(), p->y()));
    return polygon;
}

int OutlineView::nearest_handle(QPointF position) const {
    if (!drawn_) return -1;
    int nearest = -1;
    double least = reach_pixels;
    const View here = view();
    for (std::size_t i = 0; i < drawn_->points.size(); ++i) {
        // A press on the left side takes the same handle.
        for (const double side : {1.0, -1.0}) {
            const Vec2& p = drawn_->points[i];
            const QPointF off = place(here, Vec2(side * p.x(), p.y())) - position;
            const double distance = std::hypot(off.x(), off.y());
            if (distance >= least) continue;
            least = distance;
            nearest = static_cast<int>(i);
        }
    }
    return nearest;
}

// --- drawing

void OutlineView::draw_scale(QPainter& painter, const View& here) const {
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

void OutlineView::draw_loops(QPainter& painter, const View& here) const {
    QColor colour = Theme::colours().accent;
    colour.setAlphaF(0.35F);
    painter.setPen(QPen(colour, 1));
    for (const Vec2& p : new_->points) {
        if (p.x() <= 0) continue;
        painter.drawLine(place(here, p), place(here, Vec2(-p.x(), p.y())));
    }
}

void OutlineView::draw_handles(QPainter& painter, const View& here) const {
    const QColor accent = Theme::colours().accent;
    QPolygonF line;
    for (const Vec2& p : drawn_->points) line << place(here, p);
    painter.setPen(QPen(palette().color(QPalette::Text), 1.2));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(line);
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
    const View here = view();
    draw_scale(painter, here);
    if (new_) {
        QColor fill = Theme::colours().soft_accent;
        painter.setBrush(fill);
        painter.setPen(QPen(Theme::colours().accent, 2));
        painter.drawPolygon(closed_outline(here, *new_));
        draw_loops(painter, here);
    }
    if (old_) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(Theme::colours().quiet_text, 1.6, Qt::DashLine));
        painter.drawPolygon(closed_outline(here, *old_));
    }
    if (drawn_) draw_handles(painter, here);
}

// --- mouse and keyboard

void OutlineView::mousePressEvent(QMouseEvent* event) {
    const int handle = event->button() == Qt::LeftButton ? nearest_handle(event->position()) : -1;
    if (handle < 0) return;
    set_handle(handle);
    drag_view_ = view();
    dragging_ = true;
    pressed_at_ = event->position();
    Q_EMIT drag_started();
}

void OutlineView::mouseMoveEvent(QMouseEvent* event) {
    if (!dragging_) {
        setCursor(nearest_handle(event->position()) >= 0 ? Qt::SizeAllCursor : Qt::ArrowCursor);
        return;
    }
    const QPointF moved = (event->position() - pressed_at_) / drag_view_.pixels_per_mm;
    const double side = pressed_at_.x() < drag_view_.axis.x() ? -1 : 1;
    Q_EMIT dragged(Vec2(side * moved.x(), drag_view_.up * moved.y()));
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
