#pragma once

#include <random>

#include "core/toy/toy.h"

namespace roundwright::test {

/// A toy with every field set at random within what a document may hold.
[[nodiscard]] Toy random_toy(std::mt19937& random);

}  // namespace roundwright::test
