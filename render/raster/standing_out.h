#pragma once

#include <stop_token>
#include <vector>

#include <QColor>
#include <QImage>

#include "core/mesh/stitch_surface.h"

namespace roundwright::render {

/// WCAG 2.2, 1.4.11: what one has to see in order to understand a picture stands out from beside it.
inline constexpr double least_outline_contrast = 3;

/// Relative luminances (WCAG 2.2) of a picture's outline, ascending: of its opaque pixels that have a clear
/// one two pixels away at most.
[[nodiscard]] std::vector<double> outline_luminances(const QImage& on_clear_ground);

/// Of a small picture of the surface, as the view shades it, from the front and from above. Empty where there
/// is nothing to see, or once asked to stop.
[[nodiscard]] std::vector<double> outline_luminances(const StitchSurface& surface,
                                                     const std::stop_token& stop = {});

/// The contrast to the ground that nine tenths of the outline have at least; 21 with no outline.
[[nodiscard]] double outline_contrast(const std::vector<double>& luminances, const QColor& ground);

/// From black to white by way of the scene's own cool dark and warm light.
[[nodiscard]] std::vector<QColor> ground_greys();

/// `usual` where the outline stands out from it; else the grey nearest to it by contrast, of a row from black
/// to white, that the outline stands out from; where there is none, the one that it stands out from most.
[[nodiscard]] QColor standing_ground(const std::vector<double>& luminances, const QColor& usual);

}  // namespace roundwright::render
