#pragma once

#include <vector>

#include <QPointF>
#include <QRectF>
#include <QString>

class QPainter;

namespace roundwright::render {

/// The mark of a join on a drawing: its number or letter in a ring, led to its place by a line.
struct JoinMark {
    QString label;
    QPointF place;  ///< layout units
};

/// Room that marks take on each side of a drawing, layout units.
[[nodiscard]] double join_mark_room();
/// The height that so many marks take above each other.
[[nodiscard]] double join_mark_column(std::size_t marks);

/// Paints a mark's ring with its label.
void paint_join_ring(QPainter& painter, QPointF middle, const QString& label);

/// Paints marks beside a drawing, each on the side it is nearer to, as high as its place, never over each
/// other.
void paint_join_marks(QPainter& painter, const QRectF& drawing, const std::vector<JoinMark>& marks);

}  // namespace roundwright::render
