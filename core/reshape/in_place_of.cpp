#include "core/reshape/in_place_of.h"

#include "core/reshape/carry_over.h"
#include "core/reshape/mirror_join.h"

namespace roundwright {
namespace {

std::vector<Feature> face_on(const PieceForm& old, const PieceForm& made) {
    const auto counts = stitch_counts(made.graph.graph);
    const StitchGraph& graph = old.graph.graph;
    if (old.piece.features.empty() || graph.rounds.empty() || counts.empty()) return {};
    std::vector<double> ends_at;
    for (std::size_t i = 1; i <= counts.size(); ++i) ends_at.push_back(double(i) / double(counts.size()));
    const int rounds = static_cast<int>(graph.rounds.size());
    const auto sources = rounds_at_same_height(ends_at, rounds, rounds);
    return carry_over(old.piece, graph, counts, 0, sources).piece.features;
}

/// With its first round where the other has it, if it can be worked from there.
PieceForm begun_like(const PieceForm& old, const PieceForm& made) {
    if (old.piece.starts_at_top == made.piece.starts_at_top) return old;
    const auto turned = mirrored(old);
    return turned ? piece_form(*turned, old.gauge) : old;
}

}  // namespace

Piece in_place_of(const PieceForm& old, const PieceForm& made, const FrogBack& back) {
    Piece piece = old.piece;
    piece.start = made.piece.start;
    piece.rounds = made.piece.rounds;
    piece.end = made.piece.end;
    piece.joining = made.piece.joining;
    piece.starts_at_top = made.piece.starts_at_top;
    piece.features = face_on(begun_like(old, made), made);
    piece.worked = progress_kept(old.piece.worked, back);
    return piece;
}

}  // namespace roundwright
