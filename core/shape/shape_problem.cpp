#include "core/shape/shape_problem.h"

#include <algorithm>
#include <cstddef>
#include <numbers>
#include <numeric>

#include "core/shape/lies_limp.h"
#include "core/stitches/stitch_measure.h"

namespace roundwright {

namespace {

/// A loop of no stitches and a round of chains alone still have some size; this much of a stitch.
constexpr double least_round_height = 0.01;
constexpr double least_loop = 1;

/// Widths of the loops on the edge, in stitch widths, as rounds are worked onto it.
using Edge = std::vector<double>;

double sum(const Edge& edge) { return std::accumulate(edge.begin(), edge.end(), 0.0); }

int foundation_loops(const Piece& piece, const StitchGraph& graph) {
    if (graph.foundation_loops > 0) return graph.foundation_loops;
    if (const auto* ring = std::get_if<ChainRing>(&piece.start)) return ring->chains;
    if (const auto* tube = std::get_if<OpenTube>(&piece.start)) return tube->chains;
    if (const auto* oval = std::get_if<OvalChain>(&piece.start)) return 2 * oval->chains;
    if (const auto* on = std::get_if<WorkedOn>(&piece.start)) return on->stitches;
    return 0;
}

/// Mean height in single crochets of the stitches that leave a loop, by the width they leave.
double mean_height(const GraphRound& round) {
    double width = 0;
    double moment = 0;
    for (const GraphStitch& made : round.stitches) {
        const double w = width_in_sc(made.stitch.kind);
        width += w;
        moment += w * height_in_sc(made.stitch.kind);
    }
    return width > 0 ? moment / width : 0;
}

/// Puts a round's loops in the place of those it is worked over; gives the share of the edge it covers.
double work_round(const GraphRound& round, Edge& edge) {
    const auto size = static_cast<std::ptrdiff_t>(edge.size());
    const auto first = std::clamp<std::ptrdiff_t>(round.first_below, 0, size);
    const auto last = std::clamp<std::ptrdiff_t>(first + round.loops_below, first, size);
    Edge made;
    for (const GraphStitch& stitch : round.stitches)
        if (loops_left(stitch.stitch) > 0) made.push_back(width_in_sc(stitch.stitch.kind));
    const double kept = std::accumulate(edge.begin(), edge.begin() + first, 0.0) +
                        std::accumulate(edge.begin() + last, edge.end(), 0.0);
    edge.erase(edge.begin() + first, edge.begin() + last);
    edge.insert(edge.begin() + first, made.begin(), made.end());
    const double all = sum(edge);
    return all > 0 ? 1 - kept / all : 0;
}

/// What is worked into a ring covers it: its chains are no loops of the edge any more.
bool covers_ring(const StitchGraph& graph, const GraphRound& round) {
    return graph.foundation_loops == 0 && &round == &graph.rounds.front() && !round.stitches.empty();
}

void set_start(const Piece& piece, ShapeProblem& problem) {
    problem.first = MeridianEnd::open;
    if (std::holds_alternative<MagicRing>(piece.start)) {
        problem.first = MeridianEnd::pole;
    } else if (std::holds_alternative<OvalChain>(piece.start)) {
        problem.first = MeridianEnd::drawn_closed;
        problem.first_fan_height_mm = problem.rest_loop_mm.front() / (2 * std::numbers::pi);
        problem.equivalent_round = true;
    }
}

/// What of a piece's span there is; none where that is all of it, or nothing.
std::optional<RoundSpan> stuffed_rounds(const Piece& piece, std::size_t rounds) {
    if (!piece.stuffed_rounds || !(piece.area_stretch > 0)) return std::nullopt;
    const int last_round = static_cast<int>(rounds) - 1;
    const RoundSpan span{std::max(piece.stuffed_rounds->first, 0),
                         std::min(piece.stuffed_rounds->last, last_round)};
    const bool whole = span.first == 0 && span.last == last_round;
    return whole || span.first > span.last ? std::nullopt : std::optional(span);
}

}  // namespace

ShapeProblem shape_problem(const Piece& piece, const StitchGraph& graph, const Gauge& gauge,
                           double fabric_mm) {
    const double w = gauge.stitch_width_mm;
    const double h = gauge.round_height_mm;
    ShapeProblem problem;
    Edge edge(static_cast<std::size_t>(std::max(0, foundation_loops(piece, graph))), 1.0);
    problem.rest_loop_mm.push_back(w * sum(edge));
    for (const GraphRound& round : graph.rounds) {
        if (covers_ring(graph, round)) edge.clear();
        const double share = work_round(round, edge);
        problem.rest_loop_mm.push_back(w * std::max(least_loop, sum(edge)));
        problem.rest_height_mm.push_back(h * std::max(least_round_height, share * mean_height(round)));
    }
    set_start(piece, problem);
    if (piece.joining == Joining::rows) problem.equivalent_round = true;
    problem.last = piece.end == End::drawn_closed ? MeridianEnd::drawn_closed : MeridianEnd::open;
    problem.fan_height_mm = w / 2;
    problem.area_stretch = piece.area_stretch;
    problem.stitch_width_mm = w;
    problem.sewn_straight = piece.joining != Joining::rows && piece.end == End::sewn_straight;
    problem.stuffed_rounds = stuffed_rounds(piece, problem.rest_height_mm.size());
    lay_unstuffed(problem, piece.joining);
    if (problem.limp) problem.equivalent_round = false;
    if (problem.sewn_straight || !(problem.area_stretch > 0)) problem.fabric_thickness_mm = fabric_mm;
    return problem;
}

}  // namespace roundwright
