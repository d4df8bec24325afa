#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

namespace roundwright {

/// What stands side by side in two lists: an item of either, or of both.
struct AlignedPair {
    std::optional<std::size_t> before;
    std::optional<std::size_t> after;

    friend bool operator==(const AlignedPair&, const AlignedPair&) = default;
};

/// Costs of an alignment. An item that is put in or taken out costs `gap`.
struct AlignmentCosts {
    std::function<int(std::size_t before, std::size_t after)> change;  ///< 0: the same
    int gap = 1;
};

/// Two lists side by side, in order, at least cost: the edit distance of Wagner and Fischer (1974). Where
/// several are as cheap, what is put in or taken out stands as late as it can. Takes so many steps, and
/// bytes, as the product of the two lengths, less what both lists begin and end with.
[[nodiscard]] std::vector<AlignedPair> align(std::size_t before, std::size_t after,
                                             const AlignmentCosts& costs);

}  // namespace roundwright
