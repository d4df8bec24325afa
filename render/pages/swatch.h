#pragma once

#include <QColor>
#include <QRectF>

#include "core/base/colour.h"

class QPainter;

namespace roundwright::render {

/// Ways to hatch, told apart without colour; later yarns begin again (their letters tell them apart).
inline constexpr int hatch_count = 6;

/// A field in the yarn's colour, hatched with the lines of its place among the toy's yarns, so that two yarns
/// can be told apart in black and white. The lines contrast with the field by at least 3.
void paint_swatch(QPainter& painter, const QRectF& field, Colour yarn, std::size_t place);

/// Black or white, whichever contrasts more with the field.
[[nodiscard]] QColor line_on(const QColor& field);

[[nodiscard]] QColor to_qcolor(Colour colour);

}  // namespace roundwright::render
