#pragma once

#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include <QColor>
#include <QImage>
#include <QObject>
#include <QPointF>
#include <QWidget>

#include "core/mesh/stitch_surface.h"
#include "core/toy/toy.h"
#include "render/raster/camera.h"
#include "render/raster/scene_part.h"

namespace roundwright::render {

/// The live picture of a piece. Nothing of the library that draws it shows here.
class SceneView : public QObject {
    Q_OBJECT
  public:
    using QObject::QObject;

    /// The widget to lay out; owned by its parent widget.
    [[nodiscard]] virtual QWidget* widget() = 0;

    /// Shows a new surface. The camera stays, unless nothing was shown before, or it was last placed by fit()
    /// and the new surface would be cut off: then it fits again.
    void set_surface(StitchSurface surface) {
        share_surface(std::make_shared<const StitchSurface>(std::move(surface)));
    }
    /// The same without a copy.
    virtual void share_surface(std::shared_ptr<const StitchSurface> surface) = 0;
    /// Shows these besides the surface, in place of the ones before.
    virtual void set_parts(std::vector<ScenePart> parts) = 0;
    /// Lays a translucent surface over the picture for comparison; none: takes it away.
    virtual void set_ghost(std::optional<Mesh> ghost) = 0;
    /// Lights these rounds (from 0); empty: none.
    virtual void set_lit_rounds(const std::vector<int>& rounds) = 0;
    virtual void set_background(const QColor& colour) = 0;

    virtual void fit() = 0;
    virtual void look_from(ViewDirection direction) = 0;
    /// Turns so that what faces `yaw_degrees`, anticlockwise seen from above, from the front on, faces the
    /// viewer a little from above. What was fitted is fitted again.
    virtual void face(double yaw_degrees) = 0;
    [[nodiscard]] virtual double yaw_degrees() const = 0;
    /// Turns by these degrees about the vertical, and up or down; for the keyboard and the first slow turn.
    virtual void turn(double yaw_degrees, double pitch_degrees) = 0;
    virtual void zoom(double factor) = 0;

    /// Pixels (logical) that one millimetre takes up at the piece's middle; for the scale bar.
    [[nodiscard]] virtual double pixels_per_mm() const = 0;
    /// The surface under this point of the view; parts do not hide it.
    [[nodiscard]] virtual std::optional<SceneHit> hit(QPointF logical_position) const = 0;
    /// The part seen at this point, an index into those given; none where the surface or nothing is seen.
    [[nodiscard]] virtual std::optional<int> part_at(QPointF logical_position) const = 0;
    /// From the eye through this point of the view.
    [[nodiscard]] virtual Ray ray(QPointF logical_position) const = 0;
    /// Where a point of space is seen, whatever stands before it.
    [[nodiscard]] virtual QPointF on_screen(const Vec3& point) const = 0;
    /// A drag that starts on these rounds of the surface moves them instead of turning the view; none: no
    /// drag does.
    virtual void set_movable_rounds(const std::optional<RoundSpan>& rounds) = 0;
    /// A double click on the surface, and Enter, are told by `opened`, and do not fit the view.
    virtual void set_opens(bool opens) = 0;
    /// The picture from where the camera stands, drawn without the screen; the background may be transparent.
    [[nodiscard]] virtual QImage picture(QSize pixels, const QColor& background) const = 0;

    /// Triangles up to which turning stays smooth on this machine; for RevolveOptions::most_triangles.
    [[nodiscard]] virtual std::size_t comfortable_triangles() const = 0;

  Q_SIGNALS:
    void hovered(int round, int stitch);  ///< -1, -1: nothing under the pointer
    void clicked(int round, int stitch);  ///< pressed and released in one place; -1, -1: beside the piece
    void part_clicked(int part);
    void part_dragged(int part, QPointF logical_position);  ///< a movable part follows the pointer
    void part_dropped(int part, QPointF logical_position);
    void fabric_dragged(QPointF logical_position);  ///< movable rounds follow the pointer
    void fabric_dropped(QPointF logical_position);
    void drag_given_up();                ///< by Escape, or since the keyboard went elsewhere
    void opened(int round, int stitch);  ///< -1, -1: by Enter
    void camera_changed();
};

/// A view drawn with Qt3D; or, where there is no graphics card with OpenGL 3.2, one drawn by the processor
/// from the same mesh, which is several times faster there than an OpenGL in software. The environment
/// variable ROUNDWRIGHT_VIEW, `qt3d` or `painter`, chooses; `qt3d` needs OpenGL 3.2 still, if only in
/// software.
[[nodiscard]] SceneView* make_scene_view(QWidget* parent);

}  // namespace roundwright::render
