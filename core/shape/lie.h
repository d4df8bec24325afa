#pragma once

#include <vector>

#include "core/shape/shape_problem.h"

namespace roundwright {

struct Shape;

/// How the fabric lies at a round.
enum class Lie {
    lies_flat,  ///< grows as a flat disc does
    cups,       ///< grows, but rises
    even,       ///< goes straight on
    closes,     ///< gets smaller
    gathers,    ///< gets smaller faster than the fabric can follow smoothly
    ruffles,    ///< has length to spare, which shows as waves
};

/// The fabric at one round, from the solved shape.
struct RoundLie {
    Lie lie = Lie::even;
    double growth = 0;   ///< g = (N_i - N_{i-1}) w / (2 pi h): 1 lies flat, above 1 has length to spare
    double rise_mm = 0;  ///< height the meridian rises over this round (0 for a flat one)
    double spare_length_mm = 0;  ///< loop length that the circle does not take up; of a ruffle, what waves
    int waves = 0;               ///< where it ruffles
    double wave_height_mm = 0;   ///< crest to trough
    double flat_increase = 0;    ///< stitches more that would lie flat here
};

/// One entry a round; none where the shape is not usable. Thresholds and their sources stand in lie.cpp.
[[nodiscard]] std::vector<RoundLie> lie_of_rounds(const ShapeProblem& problem, const Shape& shape);

}  // namespace roundwright
