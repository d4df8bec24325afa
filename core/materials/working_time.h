#pragma once

#include <optional>

#include "core/materials/estimate.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/making.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Single crochets a minute of an unhurried hand that counts and moves the marker on: a guess of our own. The
/// maker's own pace replaces it.
inline constexpr Estimate usual_stitches_per_minute{10, 6, 16};

/// A round ticked off faster than this was not being worked, slower was left lying; our own bounds.
inline constexpr double slowest_stitches_per_minute = 1;
inline constexpr double fastest_stitches_per_minute = 60;

/// Half width of the range round the maker's own pace, over it.
inline constexpr double pace_error = 0.15;

/// Minutes at the hook for so many single crochets' worth of work (a stitch is taken to cost
/// time as it takes yarn). Stuffing, sewing up and finishing are not in it.
[[nodiscard]] Estimate working_minutes(double single_crochets, const Making& making);

/// What was timed while it was worked.
struct TimedWork {
    double single_crochets = 0;  ///< a stitch counts as its yarn
    double minutes = 0;
    int rounds = 0;

    TimedWork& operator+=(const TimedWork& other);
    /// Single crochets a minute; nothing if nothing was timed.
    [[nodiscard]] std::optional<double> pace() const;
};

/// The rounds of a piece that were timed (`WorkedSoFar::seconds_of_round`) at a pace that a hand can have.
[[nodiscard]] TimedWork timed_work(const Piece& piece, const StitchGraph& graph);

}  // namespace roundwright
