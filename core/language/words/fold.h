#pragma once

#include <vector>

namespace roundwright {

/// A run of one item, or a repeated body.
struct Fold {
    int item = -1;  ///< the item of a run; -1 for a repeat
    int count = 1;  ///< length of the run, or how often the body is worked
    std::vector<Fold> body;

    friend bool operator==(const Fold&, const Fold&) = default;
};

/// The shortest way to write `items` with runs and (nested) repeats, `width` being the characters of each
/// item when written once. Whole periods are found first; what is left is settled by dynamic programming over
/// the primitive squares of the sequence, exactly up to some hundred items and over its runs beyond that.
[[nodiscard]] std::vector<Fold> fold_repeats(const std::vector<int>& items, const std::vector<int>& width);

}  // namespace roundwright
