#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QPointF>
#include <QRectF>

#include "render/illustration/piece_drawing.h"
#include "render/pages/layout/recording.h"
#include "render/wording/pattern/pattern_facts.h"

class QPainter;

namespace roundwright::render {

/// From where the whole toy is shown.
enum class ToyView {
    front,
    side,   ///< from its own left: the viewer's right of the front
    back,
    aside,  ///< from a little above and to one side: the cover's
};
[[nodiscard]] DrawingView drawing_view(ToyView view);

/// The surfaces of a toy put together, as one that is drawn stitch by stitch, with what is fitted to it.
class ToyModel {
  public:
    explicit ToyModel(const PatternStudy& study);

    [[nodiscard]] bool empty() const { return surface_.mesh.triangle_count() == 0; }
    [[nodiscard]] std::size_t stitches() const { return surface_.stitches.size(); }
    /// What a view shows of it, mm, y down, the toy's origin at (0, 0).
    [[nodiscard]] QRectF seen_mm(ToyView view) const;

  private:
    friend class ToyFigure;
    [[nodiscard]] DrawOptions options(ToyView view, double units_per_mm) const;

    StitchSurface surface_;
    std::vector<DrawnPart> parts_;
};

/// The toy drawn in one view at one scale: once, and painted at will.
class ToyFigure {
  public:
    ToyFigure() = default;
    /// At so many layout units a mm.
    ToyFigure(const ToyModel& model, double units_per_mm, ToyView view, YarnDetail most_detail);

    /// Paints it with the toy's origin at `origin`.
    void paint(QPainter& painter, QPointF origin) const;

  private:
    std::shared_ptr<const Recording> recording_;
    QPointF origin_;
};

/// Where a join is seen from a view, mm, y down, the toy's origin at (0, 0): the place on the piece that is
/// sewn to. Nothing where that looks away from the viewer, or the join holds nothing.
struct SeenJoin {
    std::size_t join = 0;
    QPointF place_mm;
};
[[nodiscard]] std::vector<SeenJoin> seen_joins(const PatternStudy& study, ToyView view);

/// Whether the toy can be shown as a whole: something is joined, and every piece has a shape.
[[nodiscard]] bool shows_whole_toy(const PatternStudy& study);

}  // namespace roundwright::render
