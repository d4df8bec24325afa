#include "core/mesh/coarse_fabric.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace roundwright {
namespace {

constexpr double fewest_cells = 3;

/// Number of the edges kept: the first, every `step`th, and the last.
std::vector<std::size_t> kept_edges(std::size_t rounds, std::size_t step) {
    std::vector<std::size_t> kept;
    for (std::size_t edge = 0; edge < rounds; edge += step) kept.push_back(edge);
    kept.push_back(rounds);
    return kept;
}

double cells_on(double loops, double stitches_a_cell) {
    return std::max(fewest_cells, std::round(loops / stitches_a_cell));
}

/// The cells of a round between two edges kept; `above` as it was, with the stitches of `round`.
LaidRound coarse_round(const LaidRound& round, const FabricGeometry& geometry, std::size_t above,
                       double cells_below, double cells_above, double rounds_a_cell) {
    LaidRound coarse;
    coarse.loops_below = static_cast<int>(cells_below);
    const double across = geometry.loops(above) / cells_above, share = cells_below / cells_above;
    const auto last = static_cast<double>(round.cells.size() - 1);
    for (double c = 0; c < cells_above; ++c) {
        const double first = geometry.loops_at(above, c, cells_above);
        const double middle = geometry.loops_at(above, c + 0.5, cells_above);
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

CoarseFabric coarse_fabric(const std::vector<LaidRound>& rounds, const FabricGeometry& geometry,
                           std::size_t rounds_a_cell, double stitches_a_cell) {
    CoarseFabric coarse;
    const auto kept = kept_edges(rounds.size(), rounds_a_cell);
    std::vector<double> cells;
    for (const std::size_t edge : kept) cells.push_back(cells_on(geometry.loops(edge), stitches_a_cell));
    for (std::size_t k = 1; k < kept.size(); ++k)
        coarse.rounds.push_back(coarse_round(rounds[kept[k] - 1], geometry, kept[k], cells[k - 1], cells[k],
                                             static_cast<double>(kept[k] - kept[k - 1])));
    coarse.geometry = geometry.coarser(kept, cells);
    return coarse;
}

}  // namespace roundwright
