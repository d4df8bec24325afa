#pragma once

#include <optional>
#include <vector>

#include <QWidget>

#include "app/session/preferences.h"
#include "core/reshape/silhouette.h"

namespace roundwright::app {

/// The outline of a piece from the side, drawn to scale: what it is now, what it becomes, and, where an
/// outline is drawn by hand, handles on it to move by mouse or keyboard. z grows upwards, or downwards for a
/// piece that starts at its top.
class OutlineView : public QWidget {
    Q_OBJECT
  public:
    explicit OutlineView(const Preferences& preferences, QWidget* parent = nullptr);

    void set_starts_at_top(bool at_top);
    /// The piece as it is; none: nothing to compare with.
    void set_old(std::optional<Silhouette> outline);
    /// The piece as it becomes, with its loops as lines across.
    void set_new(std::optional<Silhouette> outline);
    /// An outline with a handle on each point, the one being drawn; none: nothing to move.
    void set_drawn(std::optional<Silhouette> outline);
    [[nodiscard]] const std::optional<Silhouette>& drawn() const { return drawn_; }

    [[nodiscard]] int handle() const { return handle_; }
    void set_handle(int handle);
    /// The handle in words: "Round 9: 58 mm across, 31 mm up".
    [[nodiscard]] QString handle_words() const;
    /// Where a handle is on the widget.
    [[nodiscard]] QPointF handle_position(int handle) const;

    [[nodiscard]] QSize sizeHint() const override { return {420, 460}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {260, 260}; }

  Q_SIGNALS:
    void handle_changed(int handle);
    /// A drag began: what comes is moved from the outline as it is now.
    void drag_started();
    /// The current handle is to be moved by so much from where the drag began.
    void dragged(const roundwright::Vec2& by_mm);
    void drag_finished();
    /// The drag is given up.
    void drag_cancelled();
    /// A key moved the current handle by so much.
    void nudged(const roundwright::Vec2& by_mm);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    struct View {
        double pixels_per_mm = 1;
        QPointF axis;    ///< where r = 0, z = 0 is drawn
        double up = -1;  ///< pixels that z grows by, sign only
    };
    [[nodiscard]] View view() const;
    [[nodiscard]] QPointF place(const View& view, const Vec2& point) const;
    [[nodiscard]] QPolygonF closed_outline(const View& view, const Silhouette& outline) const;
    [[nodiscard]] int nearest_handle(QPointF position) const;
    void draw_scale(QPainter& painter, const View& view) const;
    void draw_loops(QPainter& painter, const View& view) const;
    void draw_handles(QPainter& painter, const View& view) const;
    bool move_by_key(int key, Qt::KeyboardModifiers modifiers);
    void step_handle(int by);
    void tell_handle();

    const Preferences& preferences_;
    bool starts_at_top_ = false;
    std::optional<Silhouette> old_;
    std::optional<Silhouette> new_;
    std::optional<Silhouette> drawn_;
    int handle_ = -1;
    bool dragging_ = false;
    QPointF pressed_at_;
    View drag_view_;
};

}  // namespace roundwright::app
