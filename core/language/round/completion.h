#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/language/round/read_round.h"

namespace roundwright {

/// Words that may go on at the cursor of a round that is being written.
struct Completion {
    std::string words;         ///< in the place of the last `replaced` bytes before the cursor
    std::size_t replaced = 0;  ///< of the word that is begun
    bool ends_round = false;   ///< with them the round comes out

    friend bool operator==(const Completion&, const Completion&) = default;
};

/// What the trade could write next in `before`, the words up to the cursor: stitches in the setting's terms
/// where one can begin; "x 6", "around", "] x 6", "; rep from * around", "sc 12" where exactly that comes out
/// over the loops below, each tried; and the count, "(18)", when all is worked. The likeliest come first, at
/// most `most`. A word that is begun is completed; one that is whole is gone on from.
[[nodiscard]] std::vector<Completion> completions(std::string_view before, const RoundSetting& setting,
                                                  const YarnTable& yarns, std::size_t most = 8);

}  // namespace roundwright
