#pragma once

#include <QPointF>
#include <QString>

class QPainter;

namespace roundwright::render {

/// A dimension line with short ticks across its ends and its measure beside the middle: below (or above) a
/// level line, to the right of an upright one, turned to run along it.
void paint_level_dimension(QPainter& painter, QPointF left, QPointF right, const QString& measure,
                           bool above = false);
void paint_upright_dimension(QPainter& painter, QPointF top, QPointF bottom, const QString& measure);

/// Room that a dimension line and its measure take beside a figure, layout units.
[[nodiscard]] double dimension_room();

}  // namespace roundwright::render
