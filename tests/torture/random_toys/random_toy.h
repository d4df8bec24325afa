#pragma once

#include <cstdint>

#include "core/toy/toy.h"

namespace roundwright::torture {

/// A toy as makers, slips and mischief write them, known by its number: stuffed or not, sewn straight, ovals,
/// rows, written words and chains, hooks and gauges of every size a file may hold, pieces of one stitch and,
/// one toy in many, of as many as the limits allow. Counts need not be workable over those below.
[[nodiscard]] Toy random_toy(std::uint64_t number);

}  // namespace roundwright::torture
