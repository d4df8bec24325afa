#pragma once

#include <memory>
#include <optional>

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>

#include "core/mesh/surface_blend.h"
#include "core/study/piece_study.h"
#include "render/scene/scene_view.h"

namespace roundwright::app {

/// Gives surfaces to the view. Where the shape of every stitch takes the place of the round one it came from,
/// the fabric slides there in a moment, so that nothing jumps; anything else is shown at once, and so is that
/// where less motion is wished for.
class ShapeArrival : public QObject {
    Q_OBJECT
  public:
    using QObject::QObject;

    void show(render::SceneView& scene, const std::shared_ptr<const StitchSurface>& surface,
              const std::shared_ptr<const PieceStudy>& study);
    /// Still on the way.
    [[nodiscard]] bool slides() const { return blend_.has_value(); }

  private:
    [[nodiscard]] bool is_finer_of_the_same(const PieceStudy& study) const;
    void slide();

    render::SceneView* scene_ = nullptr;
    std::shared_ptr<const StitchSurface> shown_;
    std::shared_ptr<const PieceStudy> study_;  ///< of `shown_`
    std::optional<SurfaceBlend> blend_;
    QElapsedTimer since_;
    QTimer ticks_;
};

}  // namespace roundwright::app
