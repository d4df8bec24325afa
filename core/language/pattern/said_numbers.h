#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace roundwright {

/// Whole numbers of rounds or stitches that stand in a maker's sentence: "between rounds 19 and 22", "the 15
/// stitches of the edge".
struct SaidNumbers {
    enum class Unit { rounds, stitches };
    struct Number {
        std::size_t at = 0;  ///< byte in the text
        std::size_t length = 0;
        int value = 0;
    };

    Unit unit = Unit::rounds;
    std::vector<Number> numbers;
    std::size_t at = 0;  ///< of the whole phrase, its unit included: "rounds 19 and 22"
    std::size_t length = 0;
};

/// What a text says of rounds ("round 4", "Rnds 3-5", "rows 2 to 6", "the 5th round") and of all the stitches
/// of one ("the 15 stitches", "all 30 sts"): a number of stitches without such a word ("7 stitches apart",
/// "skip 2 stitches") counts some of a round, and is not among them. In the order of the text.
[[nodiscard]] std::vector<SaidNumbers> said_numbers(std::string_view utf8);

/// The phrase with other numbers, one for each.
[[nodiscard]] std::string said_with(std::string_view utf8, const SaidNumbers& said,
                                    const std::vector<int>& numbers);

}  // namespace roundwright
