#include "app/session/piece_graphs.h"

#include <algorithm>
#include <iterator>

namespace roundwright::app {
namespace {

/// As it is said, as it is shown, as it is tried, and one more while they change.
constexpr std::size_t most_of_a_piece = 4;

}  // namespace

std::shared_ptr<const SharedGraph> PieceGraphs::of(const PieceList& pieces, std::size_t piece) {
    auto& graphs = latest_[pieces.id(piece)];
    const Piece& wanted = pieces[piece];
    const auto known = std::ranges::find_if(graphs, [&wanted](const auto& graph) {
        return &graph->piece() == &wanted || same_stitches(graph->piece(), wanted);
    });
    if (known != graphs.end()) {
        std::rotate(known, std::next(known), graphs.end());
        return graphs.back();
    }
    if (graphs.size() == most_of_a_piece) graphs.erase(graphs.begin());
    graphs.push_back(std::make_shared<const SharedGraph>(pieces.shared(piece)));
    return graphs.back();
}

void PieceGraphs::keep_only(const PieceList& pieces) {
    std::erase_if(latest_, [&pieces](const auto& each) { return !pieces.index_of(each.first); });
}

}  // namespace roundwright::app
