#include "app/rounds/round_counts.h"

#include "core/rounds/piece_graph.h"

namespace roundwright::app {

std::vector<int> edge_counts(const Piece& piece) {
    const StitchGraph graph = piece_graph(piece).graph;
    std::vector<int> counts{graph.foundation_loops};
    for (const auto& round : graph.rounds) counts.push_back(round.loops_left);
    counts.resize(piece.rounds.size() + 1, 0);
    return counts;
}

}  // namespace roundwright::app
