#pragma once

#include <vector>

#include "core/materials/cost.h"
#include "core/materials/estimate.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright {

/// A piece with what was computed of it.
struct WorkedPiece {
    const Piece* piece = nullptr;
    const StitchGraph* graph = nullptr;
    Gauge gauge;
    double volume_mm3 = 0;  ///< stuffed; 0 where the shape is not known
};

struct YarnUse {
    Estimate metres;
    Estimate grams;
    std::optional<int> balls;
};

/// What one toy takes: every piece, as often as it is made.
struct Materials {
    std::vector<YarnUse> yarns;  ///< by yarn of the toy; one, of a plain light yarn, if the toy names none
    Estimate stuffing_g;
    Estimate minutes;  ///< at the hook
    int stitches = 0;
    Cost cost;
};

[[nodiscard]] Materials materials(const Toy& toy, const std::vector<WorkedPiece>& pieces);

}  // namespace roundwright
