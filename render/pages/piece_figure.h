#pragma once

#include <memory>
#include <vector>

#include <QPointF>
#include <QRectF>
#include <QSizeF>

#include "core/study/piece_study.h"
#include "core/toy/toy.h"
#include "render/illustration/piece_drawing.h"
#include "render/pages/layout/paper.h"
#include "render/pages/layout/recording.h"
#include "render/wording/length_unit.h"

class QPainter;

namespace roundwright::render {

/// How a piece is shown in a picture.
enum class FigureView {
    front,  ///< straight on, so that dimension lines measure what they say
    above,  ///< from a little above, its face to the viewer; without one, a little aside too
    top,    ///< straight down: what a flat piece is known by
};

/// A piece's surface with what is fitted to it: what pictures of it are drawn from.
class PieceModel {
  public:
    PieceModel(const Toy& toy, std::size_t piece, const PieceStudy& study);

    [[nodiscard]] std::size_t stitches() const { return surface_.stitches.size(); }
    [[nodiscard]] bool empty() const { return surface_.mesh.triangle_count() == 0; }
    /// What a view shows of it, mm, y down, the foot of the axis at the origin.
    [[nodiscard]] QRectF seen_mm(FigureView view) const;
    [[nodiscard]] const PieceMeasures& measures() const { return *measures_; }

  private:
    friend class PieceFigure;
    [[nodiscard]] DrawingView view_of(FigureView view) const;

    StitchSurface surface_;
    std::vector<DrawnPart> parts_;
    double face_degrees_;
    const PieceMeasures* measures_;
};

/// The view that measures a piece best: from the front, or for a flat one from the top. One that ruffles is
/// shown from above and aside, since straight from the top its waves are not seen.
[[nodiscard]] FigureView measured_view(const PieceStudy& study);

/// Largest scale (layout units a mm) at which a piece in a view fits a box with its dimension lines.
[[nodiscard]] double measured_scale(const PieceModel& model, FigureView view, QSizeF box);

/// Detail that keeps a picture of so many stitches to a few hundred kilobytes.
[[nodiscard]] YarnDetail detail_for_stitches(std::size_t stitches);

/// A piece drawn stitch by stitch in one view at one scale. Drawn once, painted at will.
class PieceFigure {
  public:
    /// At so many layout units a mm. Nothing is drawn of an empty model.
    PieceFigure() = default;
    PieceFigure(const PieceModel& model, double scale, FigureView view,
                YarnDetail most_detail = YarnDetail::twist);

    /// Paints it with the foot of its axis at `foot`.
    void paint(QPainter& painter, QPointF foot) const;
    /// Paints it in a box, with the solved size at dimension lines: the width below and, seen from the front,
    /// the height to the right.
    void paint_measured(QPainter& painter, const QRectF& box, LengthUnit units) const;

  private:
    std::shared_ptr<const Recording> recording_;
    QPointF foot_;
    double units_per_mm_ = 0;
    double width_mm_ = 0;
    double height_mm_ = 0;
    QRectF measured_mm_;  ///< what the dimension lines stand beside, the foot at the origin
    FigureView view_ = FigureView::front;
};

}  // namespace roundwright::render
