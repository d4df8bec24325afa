#include "core/mesh/coarse_fabric.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace roundwright {
namespace {

constexpr double two_pi = 2 * std::numbers::pi;
constexpr double fewest_cells = 3;

/// Number of the loops kept: the first, every `step`th, and the last.
std::vector<std::size_t> kept_loops(std::size_t rounds, std::size_t step) {
    std::vector<std::size_t> kept;
    for (std::size_t edge = 0; edge < rounds; edge += step) kept.push_back(edge);
    kept.push_back(rounds);
    return kept;
}

double cells_on(double loops, double stitches_a_cell) {
    return std::max(fewest_cells, std::round(loops / stitches_a_cell));
}

/// Loops from the start of `loop` to an angle, 0 up to all of them.
double loops_along(const LaidLoop& loop, double angle) {
    const double turns = (loop.start_angle - angle) / two_pi;
    return (turns - std::floor(turns)) * loop.loops;
}

/// The cells of a round between two loops kept; `above` as it was, with the stitches of `round`.
LaidRound coarse_round(const LaidRound& round, const LaidLoop& above, double start_angle, double cells_below,
                       double cells_above, double rounds_a_cell) {
    LaidRound coarse;
    coarse.loops_below = static_cast<int>(cells_below);
    const double across = above.loops / cells_above, share = cells_below / cells_above;
    const auto last = static_cast<double>(round.cells.size() - 1);
    for (double c = 0; c < cells_above; ++c) {
        const double first = loops_along(above, start_angle - two_pi * c / cells_above);
        const double middle = loops_along(above, start_angle - two_pi * (c + 0.5) / cells_above);
        LaidStitch cell = round.cells[static_cast<std::size_t>(std::min(middle, last))];
        cell.below_first = c * share;
        cell.below_last = (c + 1) * share;
        cell.face_first = first - std::floor(first);
        cell.face_across = across;
        cell.face_up = rounds_a_cell;
        coarse.cells.push_back(cell);
    }
    return coarse;
}

}  // namespace

CoarseFabric coarse_fabric(const std::vector<LaidRound>& rounds, const LaidMeridian& meridian,
                           std::size_t rounds_a_cell, double stitches_a_cell) {
    CoarseFabric coarse;
    coarse.meridian = meridian;
    coarse.meridian.loops.clear();
    const double start_angle = meridian.loops.front().start_angle;
    const auto kept = kept_loops(rounds.size(), rounds_a_cell);
    for (const std::size_t edge : kept) {
        LaidLoop loop = meridian.loops[edge];
        loop.loops = cells_on(loop.loops, stitches_a_cell);
        loop.start_angle = start_angle;
        coarse.meridian.loops.push_back(loop);
    }
    for (std::size_t k = 1; k < kept.size(); ++k)
        coarse.rounds.push_back(coarse_round(
            rounds[kept[k] - 1], meridian.loops[kept[k]], start_angle, coarse.meridian.loops[k - 1].loops,
            coarse.meridian.loops[k].loops, static_cast<double>(kept[k] - kept[k - 1])));
    return coarse;
}

}  // namespace roundwright
