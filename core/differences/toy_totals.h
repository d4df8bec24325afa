#pragma once

#include "core/toy/toy.h"

namespace roundwright {

/// How large a toy is, each piece counted once.
struct ToyTotals {
    int pieces = 0;
    int rounds = 0;
    int stitches = 0;

    friend bool operator==(const ToyTotals&, const ToyTotals&) = default;
};

[[nodiscard]] ToyTotals toy_totals(const Toy& toy);

}  // namespace roundwright
