#pragma once

#include <functional>
#include <vector>

#include "core/shape/solve_shape.h"
#include "core/shape/yield_flat.h"

namespace roundwright {

/// Loops as circles: radius and height of each, mm. A drawn end that is held has its point in the plane of
/// its loop, as the chain of an oval has.
struct LoopCircles {
    std::vector<double> radius_mm;
    std::vector<double> z_mm;
    double first_pole_z_mm = 0;
    double last_pole_z_mm = 0;
};

/// Rounds that lie on the table, or hang flat at an edge, stay there; what lies between them is in balance by
/// itself. Left to the membrane, whose slack loops cost little, the flat base of a cup would round its edge
/// into a bowl, since nothing would press it to the table.
///
/// With f how far a round takes part (`YieldedFabric`), the circles are the mean, over all levels from 0 to
/// 1, of the shape in which exactly the rounds of f at that level or above are held flat: continuous in every
/// f, and one shape alone where each is 0 or 1. `balanced` solves what is left to the membrane; the shape
/// that it gave and that ended worst, or an empty one where nothing was solved, is kept in `solved`.
[[nodiscard]] LoopCircles lying_rounds(const YieldedFabric& fabric,
                                       const std::function<Shape(const ShapeProblem&)>& balanced,
                                       Shape& solved);

}  // namespace roundwright
