#pragma once

#include <memory>

#include <QPointF>
#include <QSizeF>

#include "render/pages/outline.h"

class QPainter;

namespace roundwright::render {

/// A piece's outline at full size, to hold the work against: from the side as it stands, with its axis; a
/// piece that lies flat from above. Thin lines mark every fifth round.
class FullSizeOutline {
  public:
    FullSizeOutline(const Piece& piece, const PieceStudy& study, bool lies_flat);

    /// Layout units.
    [[nodiscard]] QSizeF size() const;
    void paint(QPainter& painter, QPointF top_left) const;

  private:
    void paint_rounds(QPainter& painter) const;
    void paint_from_side(QPainter& painter) const;
    void paint_from_above(QPainter& painter) const;

    std::shared_ptr<const PieceOutline> outline_;
    bool lies_flat_;
};

}  // namespace roundwright::render
