#pragma once

#include <functional>

#include <QRectF>

#include "app/plot/round_strips.h"

class QPainter;
class QPalette;

namespace roundwright::app {

/// Draws a strip into an area: its title above, its ends to the left, its limits dashed, and a line through
/// the values; `x_of` says where each round stands.
void draw_strip(QPainter& painter, const RoundStrip& strip, const QRectF& area,
                const std::function<double(int)>& x_of, const QPalette& palette);

}  // namespace roundwright::app
