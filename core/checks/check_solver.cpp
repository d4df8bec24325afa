#include <algorithm>
#include <cmath>

#include "core/checks/families.h"

namespace roundwright {

namespace {

/// Beyond these no stitch of the trade goes, and the numbers of a piece are too far apart for its solve: a
/// treble is three single crochets high, and no round more than doubles or halves the one below. Limits of
/// our own.
constexpr double most_out_of_square = 5;
constexpr double most_change = 4;

double out_of(double a, double b) { return std::max(a / b, b / a); }

/// How many times the loops of a round are those below, or those below them.
double change(const CheckInput& input, int round) {
    const int below = input.loops_below(round);
    const int left = input.loops_left(round);
    return below > 0 && left > 0 ? out_of(below, left) : 1;
}

int steepest_round(const CheckInput& input) {
    int steepest = 0;
    for (int round = 1; round < input.graphed_rounds(); ++round)
        if (change(input, round) > change(input, steepest)) steepest = round;
    return steepest;
}

}  // namespace

void check_solver(const CheckInput& input, std::vector<Check>& checks) {
    const Termination termination = input.measures.termination;
    const bool computed = input.graphed_rounds() > 0;
    if (!computed || termination == Termination::converged || termination == Termination::cancelled) return;
    Check check{CheckCode::not_converged, Severity::warning, input.piece_index, -1, {input.rounds()}, {}};
    const Gauge& gauge = input.gauge;
    if (const int round = steepest_round(input);
        out_of(gauge.stitch_width_mm, gauge.round_height_mm) > most_out_of_square) {
        check.arguments.emplace_back(Millimetres{gauge.stitch_width_mm});
        check.arguments.emplace_back(Millimetres{gauge.round_height_mm});
    } else if (change(input, round) > most_change) {
        check.round = round;
        check.arguments.emplace_back(input.loops_below(round));
        check.arguments.emplace_back(input.loops_left(round));
    }
    checks.push_back(std::move(check));
}

}  // namespace roundwright
