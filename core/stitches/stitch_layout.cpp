#include "core/stitches/stitch_layout.h"

#include <algorithm>
#include <cstddef>

namespace roundwright {
namespace {

struct LoopOwner {
    int round = 0;
    int stitch = -1;
};

/// Stitches from `first` on that share one foot.
std::size_t sharing_foot(const std::vector<GraphStitch>& stitches, std::size_t first) {
    std::size_t last = first + 1;
    while (last < stitches.size() && stitches[last].stitch.same_foot && stitches[last].stitch.feet == 1)
        ++last;
    return last - first;
}

/// The stitches of a round that leave a loop, each over its own feet; chains get an empty place.
std::vector<LaidStitch> on_their_feet(const GraphRound& round, int number, int loops_below) {
    std::vector<LaidStitch> cells;
    cells.reserve(round.stitches.size());
    const double most = loops_below;
    double reached = 0;
    for (std::size_t s = 0; s < round.stitches.size();) {
        const auto& first = round.stitches[s];
        const std::size_t sharing = first.stitch.feet == 1 ? sharing_foot(round.stitches, s) : 1;
        double from = std::clamp<double>(first.first_foot, reached, most);
        double to = std::clamp<double>(first.first_foot + first.stitch.feet, from, most);
        if (first.stitch.feet == 0) from = to = reached;
        for (std::size_t k = 0; k < sharing; ++k, ++s) {
            if (loops_left(round.stitches[s].stitch) == 0) continue;
            const double share = (to - from) / static_cast<double>(sharing);
            cells.push_back({number, static_cast<int>(s), from + share * static_cast<double>(k),
                             from + share * static_cast<double>(k + 1), false});
        }
        if (loops_left(first.stitch) != 0) reached = to;
    }
    return cells;
}

bool is_chain(const LaidStitch& cell) { return cell.below_first == cell.below_last; }

/// Shares the free loops between `from` and `to` among the cells [first, last) that stand on none, or, if
/// there are none, between the neighbours.
void fill_gap(std::vector<LaidStitch>& cells, std::size_t first, std::size_t last, double from, double to) {
    const double share = (to - from) / static_cast<double>(std::max<std::size_t>(1, last - first));
    for (std::size_t c = first; c < last; ++c) {
        cells[c].below_first = from + share * static_cast<double>(c - first);
        cells[c].below_last = from + share * static_cast<double>(c - first + 1);
    }
    if (first < last) return;
    const double middle = (from + to) / 2;
    if (first > 0) cells[first - 1].below_last = middle;
    if (last < cells.size()) cells[last].below_first = middle;
}

/// Makes neighbours meet over [0, loops_below].
void close_gaps(std::vector<LaidStitch>& cells, int loops_below) {
    double from = 0;
    for (std::size_t c = 0; c < cells.size();) {
        std::size_t next = c;
        while (next < cells.size() && is_chain(cells[next])) ++next;
        const double to = next < cells.size() ? cells[next].below_first : loops_below;
        if (next == 0) cells[0].below_first = 0;
        if (next > 0) fill_gap(cells, c, next, from, to);
        if (next == cells.size()) return;
        from = cells[next].below_last;
        c = next + 1;
    }
    if (!cells.empty()) cells.back().below_last = loops_below;
}

/// Worked into a ring: evenly around it, whatever the feet say.
std::vector<LaidStitch> around_a_ring(const GraphRound& round, int number) {
    std::vector<LaidStitch> cells;
    for (std::size_t s = 0; s < round.stitches.size(); ++s) {
        if (loops_left(round.stitches[s].stitch) == 0) continue;
        const auto at = static_cast<double>(cells.size());
        cells.push_back({number, static_cast<int>(s), at, at + 1, false});
    }
    return cells;
}

/// A round over loops [first, after) of the edge: the loops it leaves alone are carried up.
LaidRound with_carried(const std::vector<LaidStitch>& own, int first, int after,
                       const std::vector<LoopOwner>& edge) {
    LaidRound laid;
    laid.loops_below = static_cast<int>(edge.size());
    const auto carry = [&](int from, int to) {
        for (int loop = from; loop < to; ++loop) {
            const auto& owner = edge[static_cast<std::size_t>(loop)];
            laid.cells.push_back({owner.round, owner.stitch, loop * 1.0, loop + 1.0, true});
        }
    };
    carry(0, first);
    for (auto cell : own) {
        cell.below_first += first;
        cell.below_last += first;
        laid.cells.push_back(cell);
    }
    carry(after, laid.loops_below);
    return laid;
}

LaidRound lay_round(const GraphRound& round, int number, const std::vector<LoopOwner>& edge) {
    if (edge.empty() || round.loops_below == 0) {
        LaidRound laid{around_a_ring(round, number), 0};
        laid.loops_below = static_cast<int>(laid.cells.size());
        return laid;
    }
    const int loops = static_cast<int>(edge.size());
    const int first = std::clamp(round.first_below, 0, loops);
    const int worked = std::clamp(round.loops_below, 0, loops - first);
    auto own = on_their_feet(round, number, worked);
    close_gaps(own, worked);
    return with_carried(own, first, first + worked, edge);
}

/// From the order of a row worked back to that of row 1.
void turn(LaidRound& row) {
    std::reverse(row.cells.begin(), row.cells.end());
    for (auto& cell : row.cells) {
        const double first = row.loops_below - cell.below_last;
        cell.below_last = row.loops_below - cell.below_first;
        cell.below_first = first;
    }
}

}  // namespace

std::vector<LaidRound> lay_stitches(const StitchGraph& graph, bool turned) {
    std::vector<LaidRound> rounds;
    rounds.reserve(graph.rounds.size());
    std::vector<LoopOwner> edge(static_cast<std::size_t>(std::max(0, graph.foundation_loops)));
    for (std::size_t i = 0; i < graph.rounds.size(); ++i) {
        if (turned && i > 0) std::reverse(edge.begin(), edge.end());
        rounds.push_back(lay_round(graph.rounds[i], static_cast<int>(i), edge));
        const auto& cells = rounds.back().cells;
        edge.resize(cells.size());
        std::transform(cells.begin(), cells.end(), edge.begin(), [](const LaidStitch& cell) {
            return LoopOwner{cell.round, cell.stitch};
        });
        if (turned && i % 2 == 1) turn(rounds.back());
    }
    return rounds;
}

}  // namespace roundwright
