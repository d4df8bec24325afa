#include "core/materials/working_time.h"

#include <algorithm>

#include "core/stitches/stitch_measure.h"

namespace roundwright {
namespace {

constexpr double seconds_per_minute = 60;

double single_crochets(const GraphRound& round) {
    double sum = 0;
    for (const GraphStitch& stitch : round.stitches) sum += yarn_in_sc(stitch.stitch);
    return sum;
}

}  // namespace

Estimate working_minutes(double single_crochets, const Making& making) {
    Estimate pace = usual_stitches_per_minute;
    if (making.stitches_per_minute && *making.stitches_per_minute > 0) {
        const double own = *making.stitches_per_minute;
        pace = {own, own * (1 - pace_error), own * (1 + pace_error)};
    }
    return {single_crochets / pace.likely, single_crochets / pace.high, single_crochets / pace.low};
}

TimedWork& TimedWork::operator+=(const TimedWork& other) {
    single_crochets += other.single_crochets;
    minutes += other.minutes;
    rounds += other.rounds;
    return *this;
}

std::optional<double> TimedWork::pace() const {
    return minutes > 0 ? std::optional(single_crochets / minutes) : std::nullopt;
}

TimedWork timed_work(const Piece& piece, const StitchGraph& graph) {
    const std::vector<double>& seconds = piece.worked.seconds_of_round;
    TimedWork all;
    for (std::size_t i = 0; i < std::min(seconds.size(), graph.rounds.size()); ++i) {
        if (seconds[i] <= 0) continue;
        const TimedWork round{single_crochets(graph.rounds[i]), seconds[i] / seconds_per_minute, 1};
        const double pace = round.single_crochets / round.minutes;
        if (pace >= slowest_stitches_per_minute && pace <= fastest_stitches_per_minute) all += round;
    }
    return all;
}

}  // namespace roundwright
