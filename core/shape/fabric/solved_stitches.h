#pragma once

#include "core/shape/fabric/solve_fabric.h"
#include "core/shape/fabric/stitch_cells.h"

namespace roundwright {

/// The cells of a piece where their solver has put them; they stand upright (`stand_upright`).
struct SolvedStitches {
    StitchCells cells;
    FabricShape shape;
};

}  // namespace roundwright
