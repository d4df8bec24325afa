#pragma once

#include "core/language/pattern/next_rounds.h"
#include "core/language/round/read_round.h"
#include "core/rounds/piece_graph.h"

namespace roundwright {

/// How many stitches a round has that does not come out: by its printed count, its words, and what the rounds
/// after it need. Misprints sit more often in printed counts, and in how often something is worked, than in
/// stitches (common practice), so words that come out outweigh a count that nothing speaks for.
[[nodiscard]] GoingOn going_on(const ReadRound& read, const RoundBelow& below, NextRounds& next);

/// Whether nothing stands against a round but that its count differs.
[[nodiscard]] bool only_count_differs(const ReadRound& read);

}  // namespace roundwright
