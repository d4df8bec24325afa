#pragma once

#include <memory>
#include <optional>

#include <QObject>

#include "app/session/document_session.h"
#include "app/session/live_preview.h"
#include "core/face/face_surface.h"
#include "render/scene/scene_view.h"

namespace roundwright::app {

/// Shows the features of the current piece in the 3D view and lets them be dragged over the fabric, where
/// they snap to the gaps between stitches; a drag is one undo step.
class FaceScene : public QObject {
    Q_OBJECT
  public:
    FaceScene(DocumentSession& session, render::SceneView& scene, QObject* parent = nullptr);
    ~FaceScene() override;

    void set_guides(bool shown);
    /// Turns the piece's face to the viewer.
    void show_face();
    /// Does so where the face is turned too far away to place anything on it.
    void show_face_if_hidden();
    /// The next click on the fabric moves this feature there; -1: none.
    void place_by_click(int feature);
    [[nodiscard]] int placing() const { return placing_; }

  Q_SIGNALS:
    /// `side`: of the face's middle as the viewer sees it, -1 left or 1 right.
    void feature_picked(int feature, int side);
    void placing_ended();

  private:
    void follow_features();
    void show_parts();
    void drag(int part, QPointF position);
    void drop(int part, QPointF position);
    void click(int round, int stitch);
    [[nodiscard]] std::optional<Toy> moved(int feature, const SurfacePlace& place) const;

    DocumentSession& session_;
    render::SceneView& scene_;
    std::vector<Feature> shown_features_;
    double shown_degrees_ = 0;
    std::vector<int> feature_of_part_;
    std::vector<int> side_of_part_;
    std::unique_ptr<LivePreview> preview_;
    bool guides_ = false;
    int placing_ = -1;
};

}  // namespace roundwright::app
