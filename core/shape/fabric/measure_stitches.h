#pragma once

#include "core/shape/fabric/solved_stitches.h"
#include "core/shape/piece_measures.h"

namespace roundwright {

/// The measures of a piece of which every stitch was solved: from side to side x, up y, from front to back z.
///
/// A loop of stitches is a polygon here, and what it measures across depends on how its corners happen to be
/// turned. So widths are means over all directions within half a stitch to either side: of a regular polygon
/// that is its length over pi (Cauchy's formula for the mean width of a convex curve; Santalo, Integral
/// Geometry and Geometric Probability, I.1), the width of the circle that is as long.
[[nodiscard]] PieceMeasures measure_stitches(const SolvedStitches& stitches);

/// Radii of the circles that are as long as what is left of each loop when it is laid out on the plane that
/// it lies nearest to and drawn tight: what waves makes it shorter than the loop.
[[nodiscard]] std::vector<double> drawn_tight_radii_mm(const SolvedStitches& stitches);

/// How an edge waves about the plane that it lies nearest to: how often it crosses over and comes back, and
/// how high it is from crest to trough. What stays within a tenth of that is no wave.
struct EdgeWaves {
    int waves = 0;
    double height_mm = 0;
};
[[nodiscard]] EdgeWaves edge_waves(const SolvedStitches& stitches, std::size_t edge);

}  // namespace roundwright
