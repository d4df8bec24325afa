#pragma once

#include <QPointF>
#include <QSizeF>

#include "core/shape/solve_shape.h"
#include "core/toy/toy.h"

class QPainter;

namespace roundwright::render {

/// A solved piece's outline at full size, to hold the work against: from the side as it stands, with its
/// axis; a piece that lies flat from above. Thin lines mark every fifth round. The shape outlives it.
class FullSizeOutline {
  public:
    FullSizeOutline(const Shape& shape, const Piece& piece, bool lies_flat)
        : shape_(&shape), starts_at_top_(piece.starts_at_top), lies_flat_(lies_flat) {}

    /// Layout units.
    [[nodiscard]] QSizeF size() const;
    void paint(QPainter& painter, QPointF top_left) const;
    [[nodiscard]] bool same_as(const FullSizeOutline& other) const;

  private:
    void paint_from_side(QPainter& painter) const;
    void paint_from_above(QPainter& painter) const;
    void paint_round(QPainter& painter, std::size_t loop) const;

    const Shape* shape_;
    bool starts_at_top_;
    bool lies_flat_;
};

}  // namespace roundwright::render
