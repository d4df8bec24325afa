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
    double volume_mm3 = 0;       ///< of what is stuffed; 0 where the shape is not known
    int gaps_between_edges = 1;  ///< with chains between them, where it is worked on the edges of others
    double seams_mm = 0;         ///< sewn with its own yarn, all its copies together
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
    double pellets_g = 0;  ///< in all of them, in bags of their own
    int pellet_bags = 0;
    Estimate minutes;  ///< at the hook
    int stitches = 0;
    Cost cost;
};

[[nodiscard]] Materials materials(const Toy& toy, const std::vector<WorkedPiece>& pieces);

}  // namespace roundwright
