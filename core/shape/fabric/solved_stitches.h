#pragma once

#include <vector>

#include "core/shape/fabric/solve_fabric.h"
#include "core/shape/fabric/stitch_cells.h"

namespace roundwright {

/// Another shape in which a ruffle is in balance, by its last edge.
struct OtherBalance {
    int waves = 0;
    double wave_height_mm = 0;
    double more_energy = 0;  ///< than the shape of least energy that was found, as a share of that
};

/// The cells of a piece where their solver has put them; they stand upright (`stand_upright`).
struct SolvedStitches {
    StitchCells cells;
    FabricShape shape;
    std::vector<OtherBalance> others{};  ///< of a ruffle: of nearly the same energy, the least first
};

}  // namespace roundwright
