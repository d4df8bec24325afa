#pragma once

#include <vector>

#include "core/shape/shape_problem.h"

namespace roundwright {

struct Shape;

/// What will show on the finished piece besides how each round lies.
enum class FabricSignKind {
    gaps,           ///< stitches pulled so far apart that stuffing shows
    ridge,          ///< a sharp edge outwards, where the growth changes suddenly
    crease,         ///< a sharp edge inwards
    widening_neck,  ///< a narrow place that the stuffing stretches wider than its stitches
};

struct FabricSign {
    FabricSignKind kind = FabricSignKind::gaps;
    int round = 0;                ///< from 0
    double stretch = 0;           ///< the larger of course and wale stretch (gaps); of the course (neck)
    double turn_degrees = 0;      ///< of the meridian at the round's top (ridge, crease)
    double growth_change = 0;     ///< growth ratio of the round above less that of this one
    double width_mm = 0;          ///< diameter of the round as stuffed
    double relaxed_width_mm = 0;  ///< the diameter its stitches have by themselves
};

/// In the order of rounds; limits stand in fabric_limits.h. None where the shape is not usable. A gap is
/// named for every round of a stuffed piece that has one; an edge only where it is the sharpest among its neighbours; a neck is
/// a round with no more stitches than its neighbours, by a tenth fewer than the widest on either side.
[[nodiscard]] std::vector<FabricSign> fabric_signs(const ShapeProblem& problem, const Shape& shape);

}  // namespace roundwright
