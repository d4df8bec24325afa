#include "core/reshape/in_place_of.h"

#include <algorithm>

#include "core/reshape/carry_over.h"

namespace roundwright {
namespace {

std::vector<Feature> face_on(const PieceForm& old, const PieceForm& made) {
    const auto counts = stitch_counts(made.graph.graph);
    if (old.piece.features.empty() || old.graph.graph.rounds.empty() || counts.empty()) return {};
    std::vector<double> ends_at;
    for (std::size_t i = 1; i <= counts.size(); ++i) ends_at.push_back(double(i) / double(counts.size()));
    const int rounds = static_cast<int>(old.graph.graph.rounds.size());
    auto sources = rounds_at_same_height(ends_at, rounds, rounds);
    if (old.piece.starts_at_top == made.piece.starts_at_top)
        return carry_over(old.piece, old.graph.graph, counts, 0, sources).piece.features;
    // Begun at the other end: what was near the first round is near the last.
    Piece turned = old.piece;
    for (Feature& feature : turned.features) {
        feature.round = std::max(0, rounds - 2 - feature.round);
        feature.end_round = std::max(0, rounds - 2 - feature.end_round);
    }
    StitchGraph graph = old.graph.graph;
    std::reverse(graph.rounds.begin(), graph.rounds.end());
    std::reverse(turned.rounds.begin(), turned.rounds.end());
    return carry_over(turned, graph, counts, 0, sources).piece.features;
}

}  // namespace

Piece in_place_of(const PieceForm& old, const PieceForm& made, const FrogBack& back) {
    Piece piece = old.piece;
    piece.start = made.piece.start;
    piece.rounds = made.piece.rounds;
    piece.end = made.piece.end;
    piece.joining = made.piece.joining;
    piece.starts_at_top = made.piece.starts_at_top;
    piece.features = face_on(old, made);
    piece.worked = progress_kept(old.piece.worked, back);
    return piece;
}

}  // namespace roundwright
