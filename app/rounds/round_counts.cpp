#include "app/rounds/round_counts.h"

#include "core/rounds/piece_graph.h"

namespace roundwright::app {

std::vector<int> edge_counts(const StitchGraph& graph, std::size_t rounds) {
    std::vector<int> counts{graph.foundation_loops};
    for (const auto& round : graph.rounds) counts.push_back(round.loops_left);
    counts.resize(rounds + 1, 0);
    return counts;
}

std::vector<int> edge_counts(const Piece& piece) {
    return edge_counts(piece_graph(piece).graph, piece.rounds.size());
}

}  // namespace roundwright::app
