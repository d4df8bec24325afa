#pragma once

#include <optional>
#include <vector>

#include <QColor>
#include <QObject>
#include <QPointF>
#include <QWidget>

#include "core/mesh/stitch_surface.h"

namespace roundwright::render {

enum class ViewDirection { front, side, back, top, bottom, three_quarter };

/// One thing drawn: a piece's surface, or a feature on it.
struct SceneItem {
    const StitchSurface* surface = nullptr;  ///< must outlive the call only
};

/// A place on the surface under a point of the window.
struct SceneHit {
    int round = 0;   ///< from 0
    int stitch = 0;  ///< from 0
    Vec3 point;      ///< mm
    Vec3 normal;
};

/// The live picture of a piece. Nothing of the library that draws it shows here.
class SceneView : public QObject {
    Q_OBJECT
  public:
    using QObject::QObject;

    /// The widget to lay out; owned by its parent widget.
    [[nodiscard]] virtual QWidget* widget() = 0;

    /// Shows a new surface; the camera stays unless nothing was shown before.
    virtual void set_surface(StitchSurface surface) = 0;
    /// Lights these rounds (from 0); empty: none.
    virtual void set_lit_rounds(const std::vector<int>& rounds) = 0;
    virtual void set_background(const QColor& colour) = 0;

    virtual void fit() = 0;
    virtual void look_from(ViewDirection direction) = 0;
    /// Turns by these degrees about the vertical, and up or down; for the keyboard and the first slow turn.
    virtual void turn(double yaw_degrees, double pitch_degrees) = 0;
    virtual void zoom(double factor) = 0;

    /// Pixels (logical) that one millimetre takes up at the piece's middle; for the scale bar.
    [[nodiscard]] virtual double pixels_per_mm() const = 0;
    [[nodiscard]] virtual std::optional<SceneHit> hit(QPointF logical_position) const = 0;

  Q_SIGNALS:
    void hovered(int round, int stitch);  ///< -1, -1: nothing under the pointer
    void clicked(int round, int stitch);
    void camera_changed();
};

/// A view drawn with Qt3D, or, where no OpenGL 3.2 is to be had, one drawn with QPainter from the same mesh.
[[nodiscard]] SceneView* make_scene_view(QWidget* parent);

}  // namespace roundwright::render
