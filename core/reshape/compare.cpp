#include "core/reshape/compare.h"

#include <algorithm>

namespace roundwright {
namespace {

const GraphRound* round_of(const StitchGraph& graph, std::size_t i) {
    return i < graph.rounds.size() ? &graph.rounds[i] : nullptr;
}

int total(const StitchGraph& graph) {
    int sum = 0;
    for (const GraphRound& round : graph.rounds) sum += static_cast<int>(round.stitches.size());
    return sum;
}

RoundPair pair_of(const GraphRound* old, const GraphRound* made) {
    RoundPair pair;
    if (old != nullptr) pair.old_stitches = old->loops_left;
    if (made != nullptr) pair.new_stitches = made->loops_left;
    pair.same = old != nullptr && made != nullptr && *old == *made;
    return pair;
}

}  // namespace

Comparison compare(const PieceForm& old, const PieceForm& made) {
    const StitchGraph& a = old.graph.graph;
    const StitchGraph& b = made.graph.graph;
    Comparison comparison;
    for (std::size_t i = 0; i < std::max(a.rounds.size(), b.rounds.size()); ++i)
        comparison.rounds.push_back(pair_of(round_of(a, i), round_of(b, i)));
    const auto& rounds = comparison.rounds;
    const bool alike = old.piece.start == made.piece.start && a.foundation_loops == b.foundation_loops;
    const auto differs =
        alike ? std::find_if(rounds.begin(), rounds.end(), [](const auto& p) { return !p.same; })
              : rounds.begin();
    comparison.first_difference = static_cast<int>(differs - rounds.begin());
    comparison.old_total = total(a);
    comparison.new_total = total(b);
    comparison.old_size = old.size();
    comparison.new_size = made.size();
    comparison.outlines_apart_mm = distance_mm(old.outline(), made.outline());
    return comparison;
}

}  // namespace roundwright
