#pragma once

#include <memory>

#include "render/scene/camera_scene_view.h"

namespace roundwright::render {

/// The view drawn by Qt3D with OpenGL, in a window of its own inside a container widget.
class Qt3dSceneView : public CameraSceneView {
    Q_OBJECT
  public:
    explicit Qt3dSceneView(QWidget* parent);
    ~Qt3dSceneView() override;

    [[nodiscard]] QWidget* widget() override;
    [[nodiscard]] std::size_t comfortable_triangles() const override;

  protected:
    void show_surface() override;
    void show_lit() override;
    void show_parts() override;
    void show_ghost() override;
    void show_background() override;
    void show_camera() override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    struct Drawing;
    void leave_by_tab(bool forward);
    void show_rim();

    std::unique_ptr<Drawing> drawing_;
};

}  // namespace roundwright::render
