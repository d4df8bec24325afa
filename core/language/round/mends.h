#pragma once

#include <vector>

#include "core/language/round/read_round.h"

namespace roundwright {

/// Looks for the likeliest mends of a round that does not prove, and hangs them on its first error. Every
/// mend offered has been tried: with it the round comes out, loops and stated count both, or, when nothing
/// small does that, the loops do and the count is put right with them. Of a round whose words come out and
/// whose count differs, the count is mended, or, where that is known to be right, the words before it.
void find_mends(ReadRound& read, const std::vector<Token>& tokens, const RoundSetting& setting,
                const YarnTable& yarns, bool count_is_right = false);

/// Puts the mends with which the round has so many stitches in front.
void put_first(ReadRound& read, int stitches);

}  // namespace roundwright
