#pragma once

#include <vector>

#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright {

/// For each new round, the old one (from 0) at the same relative height. `ends_at`: where each new round
/// ends, as a part (0..1) of the whole; `old_rounds`: how many rounds, ends included, that whole was.
[[nodiscard]] std::vector<int> rounds_at_same_height(const std::vector<double>& ends_at, int rounds,
                                                     double old_rounds);

/// How a round is worked when its own stitches can no longer stand: the kind of stitch and loop that most of
/// it is worked in.
[[nodiscard]] WorkedEvenly worked_mostly(const GraphRound& round);

/// A piece with new counts that keeps at the same relative height what the maker said of the old rounds:
/// kind of stitch, loop, spacing, yarn (a thin band is kept if its neighbours can spare a round), lies-flat
/// marks, notes (each once), and features, at the same angles about the axis. A round whose own words still
/// fit keeps them.
struct CarriedOver {
    Piece piece;
    std::vector<int> rewritten;  ///< old rounds (from 0) whose words could not be kept
};
[[nodiscard]] CarriedOver carry_over(const Piece& old, const StitchGraph& graph,
                                     const std::vector<int>& counts, int foundation,
                                     const std::vector<int>& sources, std::size_t kept = 0);

}  // namespace roundwright
