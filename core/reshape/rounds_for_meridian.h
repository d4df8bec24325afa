#pragma once

#include <vector>

#include "core/gauge/gauge.h"
#include "core/reshape/silhouette.h"
#include "core/shape/shape_problem.h"
#include "core/shape/solve_shape.h"
#include "core/toy/toy.h"

namespace roundwright {

/// How many stitches lie around a piece, anywhere along its meridian, and not only at whole rounds: the form
/// to be rounded to whole stitches. Everything is counted in rounds and stitches, so that the same profile
/// serves any size and any gauge.
struct StitchProfile {
    std::vector<double> at_round;  ///< from 0 at the start, increasing; the last is the far end
    std::vector<double> stitches;  ///< around the piece there; straight in between
    bool ring_start = true;        ///< false: round 1 is worked into loops, `stitches.front()` of them
    bool drawn_closed = false;     ///< the last stretch is the fan that closes the end

    [[nodiscard]] double rounds() const { return at_round.back(); }
    [[nodiscard]] double stitches_at(double round) const;
};

/// The profile of a piece's own rounds: its relaxed loops, one a whole round.
[[nodiscard]] StitchProfile stitch_profile(const ShapeProblem& problem, double stitch_width_mm);

/// The fabric along a silhouette, as it lies in the finished piece.
struct FabricAlong {
    std::vector<double> course_stretch;  ///< of the loop at each point
    std::vector<double> round_mm;        ///< height of a round, stretched, between each two points
};

/// The same stretch everywhere, in which a ball is in balance: the tension of a round membrane is the same
/// both ways, so each way stretches as its stiffness allows, and both together by the area stretch.
[[nodiscard]] FabricAlong evenly_stretched(const Silhouette& silhouette, double area_stretch,
                                           const Gauge& gauge);

/// The fabric along a solved shape's own outline (`silhouette_of`).
[[nodiscard]] FabricAlong as_solved(const ShapeProblem& problem, const Shape& shape);

/// Walks a silhouette in steps of a round: at arc length s it takes
///
///     N(s) = 2 pi r(s) / (w (1 + course stretch)) stitches, and each round climbs h (1 + wale stretch).
///
/// A first point on the axis is a magic ring, a last one is drawn closed.
[[nodiscard]] StitchProfile stitch_profile(const Silhouette& silhouette, const FabricAlong& fabric,
                                           double stitch_width_mm);

/// How a profile is to be cut into rounds: `around` times the stitches, `along` times the rounds.
struct ProfileScale {
    double around = 1;
    double along = 1;
};

/// Rounds that come nearest to the length of the scaled profile; a fan takes up `fan_rounds` of it.
[[nodiscard]] double rounds_wanted(const StitchProfile& profile, const ProfileScale& scale,
                                   double fan_rounds);

/// Where on the profile each of `rounds` rounds ends (in its own rounds), one a round. With `kept` rounds
/// already worked the others are laid off from the far end, so that the end comes out as wanted and what does
/// not fit shows where the new rounds begin; else they are spread over the whole.
[[nodiscard]] std::vector<double> places_of_rounds(const StitchProfile& profile, const ProfileScale& scale,
                                                   double fan_rounds, int rounds, int kept);

/// Wanted stitches at such places. Where the scaled profile would grow or close faster than flat, and faster
/// than it does unscaled, it is held back to that: stretching an outline must not ruffle it. What a whole
/// number of rounds leaves over of the length is no stretching.
[[nodiscard]] std::vector<double> wanted_stitches(const StitchProfile& profile, const ProfileScale& scale,
                                                  const std::vector<double>& places, double flat_growth);

}  // namespace roundwright
