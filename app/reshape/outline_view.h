#pragma once

#include <optional>
#include <vector>

#include <QWidget>

#include "app/kit/preferences.h"
#include "app/reshape/outline_placement.h"
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
    /// The piece as it becomes, with its loops as lines across. Beside an outline drawn by hand it is laid so
    /// that their middles meet: the start of a piece may have been drawn elsewhere.
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
    [[nodiscard]] QSize minimumSizeHint() const override { return {240, 240}; }

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
    /// What the last drag or keys did is to be taken back, or done again.
    void undo_asked();
    void redo_asked();

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    [[nodiscard]] OutlinePlacement placement() const;
    [[nodiscard]] std::optional<Silhouette> new_as_placed() const;
    void draw_scale(QPainter& painter, const OutlinePlacement& here) const;
    void draw_new(QPainter& painter, const OutlinePlacement& here) const;
    void draw_handles(QPainter& painter, const OutlinePlacement& here) const;
    bool move_by_key(int key, Qt::KeyboardModifiers modifiers);
    void step_handle(int by);
    void tell_handle();
    [[nodiscard]] QString outlines_words() const;

    const Preferences& preferences_;
    bool starts_at_top_ = false;
    std::optional<Silhouette> old_;
    std::optional<Silhouette> new_;
    std::optional<Silhouette> drawn_;
    int handle_ = -1;
    bool dragging_ = false;
    QPointF pressed_at_;
    OutlinePlacement drag_placement_;
};

}  // namespace roundwright::app
