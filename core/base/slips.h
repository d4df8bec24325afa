#pragma once

#include <string_view>

namespace roundwright {

/// Slips of the fingers between two words: letters changed, left out, added, or swapped with their neighbour
/// (Damerau-Levenshtein distance, optimal string alignment). 3 where there are more than 2, or a word is
/// longer than 32 letters.
[[nodiscard]] int slips_between(std::string_view a, std::string_view b);

}  // namespace roundwright
