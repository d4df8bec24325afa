#pragma once

#include <memory>
#include <optional>

#include <QStackedWidget>

#include "app/reshape/outline_view.h"
#include "core/mesh/stitch_surface.h"
#include "core/toy/toy.h"
#include "render/background/background.h"

namespace roundwright::render {
class SceneView;
}

namespace roundwright::app {

/// What a piece becomes, to look at as an outline or as the stuffed fabric, with the old piece as a ghost.
class PreviewStack : public QStackedWidget {
    Q_OBJECT
  public:
    explicit PreviewStack(const Preferences& preferences, QWidget* parent = nullptr);

    [[nodiscard]] OutlineView& outline() { return *outline_; }
    [[nodiscard]] bool shows_fabric() const { return currentIndex() == 1; }
    void set_shows_fabric(bool fabric);
    /// The surface the old piece has, for the ghost; may be null.
    void set_old_surface(std::shared_ptr<const StitchSurface> surface) { old_surface_ = std::move(surface); }
    /// The piece to draw as fabric: piece `piece` of the toy. Worked out only while it is looked at.
    void set_piece(std::shared_ptr<const Toy> toy, std::size_t piece);
    [[nodiscard]] bool busy() const { return task_.busy(); }

  Q_SIGNALS:
    /// The fabric could not be worked out; the outline shows in its place.
    void failed(const QString& why);

  private:
    void draw_fabric();
    void take(StitchSurface surface);

    OutlineView* outline_;
    QWidget* fabric_;
    render::SceneView* scene_ = nullptr;
    std::shared_ptr<const StitchSurface> old_surface_;
    std::shared_ptr<const Toy> toy_;
    std::size_t piece_ = 0;
    render::Background task_;
};

}  // namespace roundwright::app
