#pragma once

#include "core/materials/estimate.h"
#include "core/pattern/making.h"

namespace roundwright {

/// Fibrefill in a piece stuffed medium, kg/m3. 12 to 16 is published for cushions; no figure for toys was
/// found in print, and small toys are often filled more tightly, so the pages tell the maker to have more at
/// hand.
inline constexpr Estimate medium_fill_kg_per_m3{14, 12, 16};

/// Firm over medium: published as up to 1.3.
inline constexpr double firm_over_medium_fill = 1.3;

/// Light over medium: the same step downwards; a value of our own.
inline constexpr double light_over_medium_fill = 1 / firm_over_medium_fill;

/// Density of the stuffing over medium, from the area stretch it gives the fabric: through light, medium and
/// firm, straight between them, and 0 where nothing is stuffed.
[[nodiscard]] double fill_over_medium(double area_stretch);

/// Grams of stuffing in a piece of this volume.
[[nodiscard]] Estimate stuffing_grams(double volume_mm3, double area_stretch, const Making& making);

}  // namespace roundwright
