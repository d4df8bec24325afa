#pragma once

#include <vector>

#include "core/study/piece_study.h"

namespace roundwright::test {

/// A toy of one piece with a gauge of 5 x 5 mm: evenly worked rounds of these counts from a magic ring, left
/// open and not stuffed.
[[nodiscard]] Toy toy_of(const std::vector<int>& counts);
/// The same, stuffed (medium) and drawn closed.
[[nodiscard]] Toy stuffed_toy_of(const std::vector<int>& counts);

/// n rounds of six increases, n even rounds, n rounds of six decreases.
[[nodiscard]] std::vector<int> ball(int n);
/// k, 2k, 3k ...
[[nodiscard]] std::vector<int> disc(int increases, int rounds);

/// The checks of the toy's first piece.
[[nodiscard]] std::vector<Check> checks_of(const Toy& toy);
/// Those of one code.
[[nodiscard]] std::vector<Check> checks_of(const Toy& toy, CheckCode code);

/// The toy with a cure applied.
[[nodiscard]] Toy cured(const Toy& toy, const Cure& cure);
[[nodiscard]] std::vector<int> counts_of(const std::vector<Round>& rounds);

/// A check as "too_many_increases round 2", for messages.
[[nodiscard]] std::string named(const std::vector<Check>& checks);

}  // namespace roundwright::test
