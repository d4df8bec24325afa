#include "core/differences/toy_totals.h"

#include "core/rounds/piece_graph.h"

namespace roundwright {

ToyTotals toy_totals(const Toy& toy) {
    ToyTotals totals;
    for (const Piece& piece : toy.pieces) {
        ++totals.pieces;
        totals.rounds += static_cast<int>(piece.rounds.size());
        for (const GraphRound& round : piece_graph(piece).graph.rounds)
            totals.stitches += static_cast<int>(round.stitches.size());
    }
    return totals;
}

}  // namespace roundwright
