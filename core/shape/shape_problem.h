#pragma once

#include <vector>

#include "core/gauge/gauge.h"
#include "core/pattern/toy.h"
#include "core/stitches/stitch_graph.h"

namespace roundwright {

/// How an end of the meridian is held.
enum class MeridianEnd {
    pole,          ///< a point on the axis (magic ring): its loop has rest length 0
    drawn_closed,  ///< the last loop stays a ring; its stitches' loops fold in as a fan to the axis
    open,          ///< a free edge
};

/// An axisymmetric piece as the solver sees it: loops along a meridian, in mm.
struct ShapeProblem {
    std::vector<double> rest_loop_mm;    ///< relaxed length of loop i, i = 0..n; loop 0 is the start
    std::vector<double> rest_height_mm;  ///< relaxed height of round i, i = 1..n, at [i - 1]
    MeridianEnd first = MeridianEnd::pole;
    MeridianEnd last = MeridianEnd::open;
    double fan_height_mm = 0;  ///< rest height of the fan that closes a drawn end
    double area_stretch = 0;   ///< mean area stretch that the stuffing gives; 0: not stuffed
};

/// The problem that a piece's stitches pose at a gauge.
[[nodiscard]] ShapeProblem shape_problem(const Piece& piece, const StitchGraph& graph, const Gauge& gauge);

}  // namespace roundwright
