#pragma once

#include <functional>

#include <QObject>
#include <QPointF>

class QKeyEvent;
class QMouseEvent;

namespace roundwright::render {

/// Turns the events of a window or a widget into what the maker means: turn, move, zoom, fit, point, click.
/// Install it as an event filter; it takes the events it understands.
///
/// Drag turns; drag with the middle button or with Shift moves; the wheel zooms; Home fits; a press and
/// release in one place clicks; arrows turn by ten degrees, with Shift by one; plus and minus zoom; Escape
/// gives up the drag of a part.
class ViewInput : public QObject {
    Q_OBJECT
  public:
    using QObject::QObject;

    /// Asked at a press: the part that a drag from here moves, or -1 to turn the view.
    void set_movable_part_at(std::function<int(QPointF)> ask) { movable_part_at_ = std::move(ask); }

    bool eventFilter(QObject* watched, QEvent* event) override;

  Q_SIGNALS:
    void turned(double yaw_degrees, double pitch_degrees);
    void panned(double right_px, double down_px);
    void wheeled(double delta);  ///< eighths of a degree
    void zoomed(double factor);
    void fit_asked();
    void key_pressed(int key);  ///< a key without modifiers that means nothing here
    void pointed(QPointF position);
    void pointer_left();
    void clicked(QPointF position);
    void double_clicked(QPointF position);
    void drag_began();
    void drag_ended();
    void part_dragged(int part, QPointF position);
    void part_dropped(int part, QPointF position);
    void part_drag_given_up();
    void tab_pressed(bool forward);

  private:
    enum class Drag { none, pressed, turning, panning, moving_part };

    void press(const QMouseEvent& event);
    void move(const QMouseEvent& event);
    void release(const QMouseEvent& event);
    bool key(const QKeyEvent& event);
    void begin_drag(const QMouseEvent& event);
    void end_drag();

    std::function<int(QPointF)> movable_part_at_;
    Drag drag_ = Drag::none;
    Qt::MouseButton button_ = Qt::NoButton;
    QPointF pressed_at_;
    QPointF last_;
    int part_ = -1;
};

}  // namespace roundwright::render
