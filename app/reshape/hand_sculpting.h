#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QObject>

#include "core/reshape/sculpt.h"

namespace roundwright::app {

class OutlineView;

/// An outline pulled by hand on a view: what mouse and keys do to it, step by step there and back, and the
/// rounds that follow.
class HandSculpting : public QObject {
    Q_OBJECT
  public:
    HandSculpting(OutlineView& view, std::shared_ptr<const PieceForm> form, QObject* parent = nullptr);

    /// Lays the piece's own outline on the view, with its handles; a step that can be taken back, if one is
    /// being pulled. False: the piece has no shape to start from.
    bool start_over();
    void stop();

    void set_reach(double mm) { reach_mm_ = mm; }
    /// Works the rounds out again where an outline is being pulled.
    void set_tidiness(double tidiness);

  Q_SIGNALS:
    void sculpted(const roundwright::Sculpted& made);

  private:
    void connect_view();
    void begin_drag();
    void drag(const Vec2& by_mm);
    void cancel_drag();
    void nudge(const Vec2& by_mm);
    void step(std::vector<Silhouette>& from, std::vector<Silhouette>& to);
    void draw(const Silhouette& outline);

    OutlineView& view_;
    std::shared_ptr<const PieceForm> form_;
    std::optional<SculptStart> start_;
    Silhouette drag_base_;
    std::vector<Silhouette> before_;  ///< outlines to go back to, the last one last
    std::vector<Silhouette> after_;   ///< gone back from
    int nudged_handle_ = -1;          ///< keys that go on moving one handle are one step
    std::optional<Shape> shape_;      ///< of the frame before
    double reach_mm_ = 1;
    double tidiness_ = 0.5;
};

}  // namespace roundwright::app
