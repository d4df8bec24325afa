#pragma once

#include <random>

#include "core/toy/toy.h"

namespace roundwright::test {

/// A toy with every field set at random within what a document may hold.
[[nodiscard]] Toy random_toy(std::mt19937& random);

/// The same with keys in some of its objects that a newer program may have put there.
[[nodiscard]] Toy with_unknown_keys(Toy toy, std::mt19937& random);

}  // namespace roundwright::test
