#pragma once

#include <vector>

#include "core/language/round/read_round.h"

namespace roundwright {

/// Looks for the likeliest mends of a round that does not prove, and hangs them on its first error. Every
/// mend offered has been tried: with it the round comes out, loops and stated count both, or, when nothing
/// small does that, the loops do and the count is put right with them.
void find_mends(ReadRound& read, const std::vector<Token>& tokens, const RoundSetting& setting,
                const YarnTable& yarns);

}  // namespace roundwright
