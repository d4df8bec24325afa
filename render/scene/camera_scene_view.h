#pragma once

#include <QTimer>

#include "core/mesh/ray_cast.h"
#include "render/background/background.h"
#include "render/raster/camera.h"
#include "render/raster/software_picture.h"
#include "render/scene/scene_view.h"
#include "render/scene/view_input.h"

namespace roundwright::render {

/// What both ways of drawing share: the things shown, the camera, the pointer and the keyboard. A way of
/// drawing adds the widget and follows the `show_` calls.
class CameraSceneView : public SceneView {
    Q_OBJECT
  public:
    explicit CameraSceneView(QObject* parent);

    void share_surface(std::shared_ptr<const StitchSurface> surface) override;
    void set_parts(std::vector<ScenePart> parts) override;
    void set_ghost(std::optional<Mesh> ghost) override;
    void set_lit_rounds(const std::vector<int>& rounds) override;
    void set_background(const QColor& colour) override;
    /// See render/scene/stepping_ground.h.
    void step_aside_from(const QColor& usual);
    void fit() override;
    void look_from(ViewDirection direction) override;
    void face(double yaw_degrees) override;
    [[nodiscard]] double yaw_degrees() const override { return camera_.yaw_degrees(); }
    void turn(double yaw_degrees, double pitch_degrees) override;
    void zoom(double factor) override;
    [[nodiscard]] double pixels_per_mm() const override;
    [[nodiscard]] std::optional<SceneHit> hit(QPointF logical_position) const override;
    [[nodiscard]] std::optional<int> part_at(QPointF logical_position) const override;
    [[nodiscard]] Ray ray(QPointF logical_position) const override;
    [[nodiscard]] QPointF on_screen(const Vec3& point) const override;
    void set_movable_rounds(const std::optional<RoundSpan>& rounds) override { movable_rounds_ = rounds; }
    void set_opens(bool opens) override { opens_ = opens; }
    [[nodiscard]] QImage picture(QSize pixels, const QColor& background) const override;

    [[nodiscard]] const Camera& camera() const { return camera_; }
    /// The line around the shape, where no ground tells it from what is around it.
    [[nodiscard]] const std::optional<QColor>& rim() const { return rim_; }

  protected:
    virtual void show_surface() = 0;
    virtual void show_lit() = 0;
    virtual void show_parts() = 0;
    virtual void show_ghost() = 0;
    virtual void show_background() = 0;
    virtual void show_camera() = 0;
    /// A drag begins or ends: the time to draw more coarsely, or finely again.
    virtual void show_dragging(bool /*dragging*/) {}

    [[nodiscard]] static QString view_name();
    [[nodiscard]] static QString view_description();
    [[nodiscard]] ViewInput& input() { return input_; }
    void set_viewport(double width_px, double height_px);
    [[nodiscard]] const StitchSurface& surface() const { return *surface_; }
    [[nodiscard]] const std::vector<float>& vertex_lit() const {
        light_rounds();
        return *lit_;
    }
    /// Fibres of brushed stitches, with theirs.
    [[nodiscard]] const Mesh& pile() const { return *pile_; }
    [[nodiscard]] const std::vector<float>& pile_lit() const {
        light_rounds();
        return *pile_lit_;
    }
    [[nodiscard]] bool any_lit() const { return !lit_rounds_.empty(); }
    [[nodiscard]] const std::vector<ScenePart>& parts() const { return *parts_; }
    [[nodiscard]] const Mesh* ghost() const { return ghost_.get(); }
    [[nodiscard]] const QColor& background() const { return background_; }
    [[nodiscard]] double stitch_mm() const { return stitch_mm_; }
    /// What is shown now; it stays as it is whatever is set later.
    [[nodiscard]] SoftwareScene software_scene(const QColor& background) const;

  private:
    [[nodiscard]] std::optional<MeshHit> fabric_hit(QPointF position) const;
    void grow_tree() const;
    [[nodiscard]] std::vector<PointCloud> content() const;
    void connect_input();
    void content_changed();
    void light_rounds() const;
    void camera_moved();
    void measure_outline();
    void choose_ground();
    void point_at(QPointF position);
    void tell_hover();
    void click_at(QPointF position);
    void double_click_at(QPointF position);
    [[nodiscard]] int movable_at(QPointF position) const;
    void key(int key);
    void moved_by_hand();

    ViewInput input_;
    Camera camera_;
    std::shared_ptr<const StitchSurface> surface_ = std::make_shared<const StitchSurface>();
    std::shared_ptr<const Mesh> pile_ = std::make_shared<const Mesh>();
    mutable std::shared_ptr<const std::vector<float>> lit_, pile_lit_;  ///< null: not worked out yet
    std::vector<int> lit_rounds_;
    mutable std::shared_ptr<const RayCaster> caster_;  ///< of the surface; null until the tree has grown
    mutable int asked_without_tree_ = 0;               ///< rays
    mutable Background growing_;
    std::shared_ptr<const std::vector<ScenePart>> parts_ = std::make_shared<const std::vector<ScenePart>>();
    std::shared_ptr<const Mesh> ghost_;
    QColor background_ = Qt::white;
    std::optional<QColor> rim_;
    Background measuring_;
    QTimer measure_later_;
    std::vector<double> outline_;         ///< luminances, as last measured
    std::optional<QColor> usual_ground_;  ///< none: the background stays as it was set
    double stitch_mm_ = 5;
    bool shown_before_ = false;
    bool opens_ = false;
    std::optional<RoundSpan> movable_rounds_;
    bool fitted_ = true;  ///< nobody has zoomed or moved the view since it was fitted
    bool hovering_ = false;
    QPointF pointer_;
    QTimer hover_timer_;
    int hover_round_ = -1;
    int hover_stitch_ = -1;
};

}  // namespace roundwright::render
