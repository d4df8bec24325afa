#pragma once

#include <QPointer>
#include <QTimer>

#include "render/background/background.h"
#include "render/scene/camera_scene_view.h"

namespace roundwright::render {

class SceneFrame;

/// Shows the picture, and draws it anew when it is stale.
class PainterCanvas;

/// The view where there is no graphics card: drawn by the processor, once per change, coarsely while it moves
/// and finely when it rests.
class PainterSceneView : public CameraSceneView {
    Q_OBJECT
  public:
    explicit PainterSceneView(QWidget* parent);
    ~PainterSceneView() override;

    [[nodiscard]] QWidget* widget() override;
    /// Whether what is shown is the fine picture of the present state.
    [[nodiscard]] bool is_fine() const { return is_fine_; }
    [[nodiscard]] std::size_t comfortable_triangles() const override { return 100'000; }

  protected:
    void show_surface() override;
    void show_lit() override;
    void show_parts() override;
    void show_ghost() override;
    void show_background() override;
    void show_camera() override;

  private:
    friend class PainterCanvas;
    void stale();
    [[nodiscard]] SoftwareScene opaque_scene(double pixel_ratio) const;
    [[nodiscard]] QImage draw_coarsely(QSize pixels);
    void start_drawing_finely();
    void stop_drawing_finely();

    QPointer<SceneFrame> frame_;
    QPointer<PainterCanvas> canvas_;
    QTimer lit_later_;
    QTimer rest_;
    bool is_fine_ = false;
    Background fine_;       ///< the fine picture is drawn beside the window's work
    double moving_ms_ = 0;  ///< what a full picture takes while the view moves
};

}  // namespace roundwright::render
