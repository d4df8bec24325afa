#pragma once

#include <vector>

#include "core/differences/align.h"
#include "core/differences/difference.h"

namespace roundwright {

/// Which yarn of the toy as it is now each yarn of before has become; nothing: it is gone.
using YarnsBecome = std::vector<std::optional<std::size_t>>;

/// The rounds of two states of a piece side by side, so that a round that was put in or taken out leaves
/// those above it beside themselves.
[[nodiscard]] std::vector<AlignedPair> aligned_rounds(const Piece& before, const Piece& after);

/// What differs in the rounds, each run of neighbouring rounds with the same difference as one. Codes, rounds
/// and counts only.
[[nodiscard]] std::vector<Difference> round_differences(const Piece& before, const Piece& after,
                                                        const YarnsBecome& yarns);

/// Stitches after each round.
[[nodiscard]] std::vector<int> round_counts(const Piece& piece);

}  // namespace roundwright
