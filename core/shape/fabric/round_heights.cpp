#include "core/shape/fabric/round_heights.h"

#include <algorithm>

#include "core/stitches/stitch_measure.h"

namespace roundwright {
namespace {

/// As in the round solve: a round of chains alone still has some height, in single crochets.
constexpr double least_height = 0.01;

const GraphStitch& stitch_of(const StitchGraph& graph, const LaidStitch& cell) {
    return graph.rounds[static_cast<std::size_t>(cell.round)].stitches[static_cast<std::size_t>(cell.stitch)];
}

/// In single crochets; 0 for a chain, and for a loop that is left alone.
std::vector<double> heights_by_kind(const StitchGraph& graph, const LaidRound& round) {
    std::vector<double> heights;
    for (const LaidStitch& cell : round.cells) {
        const bool stands = !cell.carried && cell.stitch >= 0;
        heights.push_back(stands ? height_in_sc(stitch_of(graph, cell).stitch.kind) : 0);
    }
    return heights;
}

void raise_chains(const LaidRound& round, std::vector<double>& heights) {
    double sum = 0, standing = 0;
    for (const double height : heights)
        if (height > 0) {
            sum += height;
            ++standing;
        }
    const double mean = standing > 0 ? sum / standing : least_height;
    for (std::size_t c = 0; c < heights.size(); ++c)
        if (!round.cells[c].carried && heights[c] < least_height) heights[c] = mean;
}

}  // namespace

RoundHeights::RoundHeights(const StitchGraph& graph, const std::vector<LaidRound>& rounds,
                           double round_height_mm, const std::vector<double>& shares) {
    for (const LaidRound& round : rounds) {
        auto& heights = cells_.emplace_back(heights_by_kind(graph, round));
        raise_chains(round, heights);
        const std::size_t i = cells_.size() - 1;
        for (double& height : heights) height *= round_height_mm * (i < shares.size() ? shares[i] : 1);
    }
}

/// Of a spiral: the side where a round ends and the next one begins.
double RoundHeights::between_rounds(std::size_t below) const {
    return (cells_[below].back() + cells_[below + 1].front()) / 2;
}

SideHeights RoundHeights::sides(std::size_t round, const SideKind& kind, bool rows) const {
    const auto& cells = cells_[round];
    const std::size_t size = cells.size();
    const auto mean = [](double a, double b) { return a > 0 && b > 0 ? (a + b) / 2 : std::max(a, b); };
    SideHeights sides;
    sides.heights.push_back(rows ? cells.front() : mean(cells.back(), cells.front()));
    for (std::size_t c = 1; c < size; ++c) sides.heights.push_back(mean(cells[c - 1], cells[c]));
    sides.heights.push_back(rows ? cells.back() : sides.heights.front());
    if (!kind.spiral) return sides;
    const bool closes = kind.last && kind.closed_end;
    for (std::size_t c = 1; c < size; ++c) {
        const double share = static_cast<double>(c) / static_cast<double>(size);
        if (kind.first) sides.heights[c] *= 0.5 + share;
        if (closes) sides.heights[c] *= 1.5 - share;
    }
    const double before = kind.first ? cells.front() / 2 : between_rounds(round - 1);
    const double after = kind.last ? (closes ? cells.back() / 2 : cells.back()) : between_rounds(round);
    sides.heights.front() = before;
    sides.heights.back() = after;
    if (kind.first) {
        sides.node_after = before;
        sides.heights.back() += before;
    }
    if (closes) {
        sides.node_before = before;
        sides.heights.front() += after;
    }
    return sides;
}

}  // namespace roundwright
