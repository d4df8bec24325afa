#pragma once

#include <QColor>

#include "core/base/colour.h"

namespace roundwright::render {

/// A yarn's colour in light and shade, opaque. `light` 1 is the colour itself, 0 the deep of a groove, up
/// to 1.5 a highlight. Shade leans to a cool dark, so that white yarn keeps its form and black yarn its
/// light.
[[nodiscard]] QColor yarn_tone(Colour yarn, double light);

/// A colour mixed with paper white: 0 the colour, 1 white.
[[nodiscard]] Colour paled(Colour colour, double share);

/// What tones differ by at the least.
inline constexpr double light_step = 1.0 / 14;

/// `light` in as many steps as the eye needs, so that shapes of one tone can be drawn together.
[[nodiscard]] double stepped_light(double light);

}  // namespace roundwright::render
