#pragma once

#include <vector>

#include <QPainterPath>
#include <QPolygonF>
#include <QRectF>

#include "core/study/piece_study.h"
#include "core/toy/toy.h"

namespace roundwright::render {

/// From where a piece's outline is seen.
enum class OutlineView { front, above };

/// The lines that a piece's fabric shows from one side, whatever its shape: the outline of its mean surface
/// and its loops. mm, x right and y down, the foot of the middle of its face at (0, 0) seen from the front
/// (so all of it is at y <= 0), the middle seen from above. What lies flat is seen as it lies. Nothing for a
/// piece without a shape.
class PieceOutline {
  public:
    PieceOutline(const Piece& piece, const PieceStudy& study, OutlineView view);

    [[nodiscard]] const QPainterPath& path() const { return path_; }
    [[nodiscard]] const QRectF& bounds() const { return bounds_; }

    /// The part of a loop that faces the viewer, from side to side, or all of it seen from above; loop 0 is
    /// the start's.
    [[nodiscard]] const QPolygonF& loop_line(std::size_t loop) const { return loops_[loop]; }
    [[nodiscard]] std::size_t loops() const { return loops_.size(); }
    /// Where that line crosses the middle of the piece: its y there, or near it.
    [[nodiscard]] double middle_of_loop(std::size_t loop) const;
    /// How far it reaches to the right of the middle.
    [[nodiscard]] double reach_of_loop(std::size_t loop) const;

  private:
    QPainterPath path_;
    QRectF bounds_;
    std::vector<QPolygonF> loops_;
};

}  // namespace roundwright::render
