#pragma once

#include <optional>
#include <vector>

#include "core/gauge/gauge.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

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
    double fan_height_mm = 0;        ///< rest height of the fan that closes a drawn end
    double area_stretch = 0;         ///< mean area stretch that the stuffing gives; 0: not stuffed
    double first_fan_height_mm = 0;  ///< of a drawn first end where it differs; 0: fan_height_mm
    double stitch_width_mm = 0;      ///< of single crochet; 0 where loops are not made of stitches
    bool equivalent_round = false;   ///< the piece is not round as worked (an oval start, rows): this is the
                                     ///< round piece with loops of the same length
    bool sewn_straight = false;  ///< the last loop is flattened and sewn across; to the membrane it is open
    // Not stuffed, and nothing holds it up (core/shape/lies_limp.h):
    bool limp = false;                          ///< it lies flattened, front on back
    bool on_its_face = false;                   ///< or on its base, top on base
    std::optional<RoundSpan> stuffed_rounds{};  ///< the stuffing lies in these rounds alone, and
                                                ///< `area_stretch` is that of their fabric; none: in all
    double fabric_thickness_mm = 0;  ///< of a piece that is not stuffed, or is sewn straight; 0: that of a
                                     ///< usual yarn for its stitch (core/shape/fabric_thickness.h)

    friend bool operator==(const ShapeProblem&, const ShapeProblem&) = default;
};

/// The problem that a piece's stitches pose at a gauge. An edge loop is as wide as the stitch that left it; a
/// round is as high as its stitches on the mean over the edge, so a partial round counts by its share. An
/// oval starts as the loop around both sides of its chain, spread to a disc of the same edge; one that lies
/// limp has its two layers on both sides of the chain, just as it is worked. Rows have no loop to flatten.
/// `fabric_mm`: how thick its fabric is; 0: not known.
[[nodiscard]] ShapeProblem shape_problem(const Piece& piece, const StitchGraph& graph, const Gauge& gauge,
                                         double fabric_mm = 0);

}  // namespace roundwright
