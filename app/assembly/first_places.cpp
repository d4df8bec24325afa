#include "app/assembly/first_places.h"

#include <algorithm>
#include <cmath>

#include "core/assembly/first_joins.h"
#include "core/rounds/piece_graph.h"

namespace roundwright::app {
namespace {

/// The end and the seam, as they would be if nothing were said of the piece yet.
Join usual_join(Toy toy, const PieceCopy& piece) {
    const auto index = toy.pieces.index_of(piece.piece);
    std::erase_if(toy.joins, [&](const Join& join) { return join.piece.piece == piece.piece; });
    const auto joins = index ? first_joins(toy, *index) : std::vector<Join>();
    return joins.empty() ? Join() : joins.front();
}

}  // namespace

Join first_place(const Toy& toy, const PieceCopy& piece, const PieceCopy& onto) {
    Join join = usual_join(toy, piece);
    const bool as_usual = join.onto == onto && join.piece == piece;
    join.piece = piece;
    join.onto = onto;
    const auto index = toy.pieces.index_of(onto.piece);
    if (as_usual || !index) return join;
    const auto counts = stitch_counts(piece_graph(toy.pieces[*index]).graph);
    join.at = {static_cast<int>(counts.size()) - 1, 0, false};
    if (counts.size() < 3) return join;
    join.at.round = (static_cast<int>(counts.size()) - 1) / 2;
    if (join.pair) join.at.stitches_right = std::round(counts[static_cast<std::size_t>(join.at.round)] / 4.0);
    return join;
}

}  // namespace roundwright::app
