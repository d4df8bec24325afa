#include "render/scene/view_input.h"

#include <QGuiApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QStyleHints>
#include <QWheelEvent>

namespace roundwright::render {

namespace {

constexpr double degrees_per_pixel = 0.4;
constexpr double key_zoom = 1.15;

}  // namespace

bool ViewInput::eventFilter(QObject* /*watched*/, QEvent* event) {
    switch (event->type()) {
        case QEvent::MouseButtonPress:
            press(*static_cast<QMouseEvent*>(event));
            return false;
        case QEvent::MouseMove:
            move(*static_cast<QMouseEvent*>(event));
            return false;
        case QEvent::MouseButtonRelease:
            release(*static_cast<QMouseEvent*>(event));
            return false;
        case QEvent::MouseButtonDblClick:
            if (const auto* mouse = static_cast<QMouseEvent*>(event); mouse->button() == Qt::LeftButton)
                Q_EMIT double_clicked(mouse->position());
            return true;
        case QEvent::Wheel: {
            const QPoint delta = static_cast<QWheelEvent*>(event)->angleDelta();
            Q_EMIT wheeled(delta.y() != 0 ? delta.y() : delta.x());
            return true;
        }
        case QEvent::Leave:
            Q_EMIT pointer_left();
            return false;
        case QEvent::FocusOut:
            end_drag();
            return false;
        case QEvent::KeyPress:
            return key(*static_cast<QKeyEvent*>(event));
        default:
            return false;
    }
}

void ViewInput::press(const QMouseEvent& event) {
    if (drag_ != Drag::none) return;
    if (event.button() != Qt::LeftButton && event.button() != Qt::MiddleButton) return;
    drag_ = Drag::pressed;
    button_ = event.button();
    pressed_at_ = last_ = event.position();
    part_ = button_ == Qt::LeftButton && movable_part_at_ ? movable_part_at_(pressed_at_) : -1;
}

void ViewInput::begin_drag(const QMouseEvent& event) {
    const bool pans = button_ == Qt::MiddleButton || event.modifiers().testFlag(Qt::ShiftModifier);
    drag_ = pans ? Drag::panning : part_ >= 0 ? Drag::moving_part : Drag::turning;
    Q_EMIT drag_began();
}

void ViewInput::move(const QMouseEvent& event) {
    const QPointF at = event.position();
    if (drag_ == Drag::none) {
        Q_EMIT pointed(at);
        return;
    }
    if (!event.buttons().testFlag(button_)) {
        end_drag();
        return;
    }
    const int slack = QGuiApplication::styleHints()->startDragDistance();
    if (drag_ == Drag::pressed && (at - pressed_at_).manhattanLength() >= slack) begin_drag(event);
    if (drag_ == Drag::pressed) return;
    const QPointF step = at - last_;
    last_ = at;
    if (drag_ == Drag::turning) Q_EMIT turned(-degrees_per_pixel * step.x(), degrees_per_pixel * step.y());
    if (drag_ == Drag::panning) Q_EMIT panned(step.x(), step.y());
    if (drag_ == Drag::moving_part) Q_EMIT part_dragged(part_, at);
}

void ViewInput::release(const QMouseEvent& event) {
    if (drag_ == Drag::none || event.button() != button_) return;
    const bool is_click = drag_ == Drag::pressed && button_ == Qt::LeftButton;
    if (drag_ == Drag::moving_part) {
        Q_EMIT part_dropped(part_, event.position());
        drag_ = Drag::turning;  // it is done, and not given up
    }
    end_drag();
    if (is_click) Q_EMIT clicked(event.position());
}

void ViewInput::end_drag() {
    const bool dragged = drag_ != Drag::none && drag_ != Drag::pressed;
    const bool moved_part = drag_ == Drag::moving_part;
    drag_ = Drag::none;
    part_ = -1;
    if (moved_part) Q_EMIT part_drag_given_up();
    if (dragged) Q_EMIT drag_ended();
}

bool ViewInput::key(const QKeyEvent& event) {
    const Qt::KeyboardModifiers modifiers = event.modifiers() & ~Qt::KeypadModifier;
    const double step = modifiers == Qt::ShiftModifier ? 1 : 10;
    if (modifiers != Qt::NoModifier && modifiers != Qt::ShiftModifier) return false;
    switch (event.key()) {
        case Qt::Key_Left:
            Q_EMIT turned(step, 0);
            return true;
        case Qt::Key_Right:
            Q_EMIT turned(-step, 0);
            return true;
        case Qt::Key_Up:
            Q_EMIT turned(0, -step);
            return true;
        case Qt::Key_Down:
            Q_EMIT turned(0, step);
            return true;
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            Q_EMIT zoomed(key_zoom);
            return true;
        case Qt::Key_Minus:
        case Qt::Key_Underscore:
            Q_EMIT zoomed(1 / key_zoom);
            return true;
        case Qt::Key_Home:
            Q_EMIT fit_asked();
            return true;
        case Qt::Key_Escape:
            if (drag_ != Drag::moving_part) break;
            end_drag();
            return true;
        case Qt::Key_Tab:
            Q_EMIT tab_pressed(modifiers == Qt::NoModifier);
            return true;
        case Qt::Key_Backtab:
            Q_EMIT tab_pressed(false);
            return true;
        default:
            break;
    }
    if (modifiers == Qt::NoModifier) Q_EMIT key_pressed(event.key());
    return false;
}

}  // namespace roundwright::render
