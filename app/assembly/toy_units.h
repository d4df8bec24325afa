#pragma once

#include <optional>
#include <vector>

#include "core/toy/toy.h"

namespace roundwright::app {

/// What is sewn on, or stands by itself, as one: a copy of a piece, or a mirrored pair.
struct ToyUnit {
    std::optional<std::size_t> piece;  ///< index into `Toy::pieces`; none: the piece of the join is gone
    std::vector<PieceCopy> copies;     ///< of a pair both
    std::optional<std::size_t> join;   ///< index into `Toy::joins`; none: it stands by itself

    [[nodiscard]] bool has(const PieceCopy& copy) const;
    friend bool operator==(const ToyUnit&, const ToyUnit&) = default;
};

/// Every copy of every piece and every join once, in the order of pieces and copies; joins of what is not
/// there at the end. Of two joins of one copy the second has none.
[[nodiscard]] std::vector<ToyUnit> units_of(const Toy& toy);

}  // namespace roundwright::app
