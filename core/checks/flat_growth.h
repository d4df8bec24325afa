#pragma once

#include "core/checks/check_input.h"

namespace roundwright {

/// Rounds [first, last], from 0.
struct RoundRun {
    int first = 0;
    int last = 0;
};

/// A cure that keeps the counts at both ends of a run and takes as many rounds as it needs to grow (or
/// shrink) by what lies flat each round. Nothing where no more rounds than now would be needed.
[[nodiscard]] std::optional<Cure> spread_cure(const CheckInput& input, RoundRun run);

/// A cure that keeps the number of rounds, each growing (or shrinking) by what lies flat. Nothing where that
/// is what it does already.
[[nodiscard]] std::optional<Cure> flat_counts_cure(const CheckInput& input, RoundRun run);

/// A cure for a piece from a ring that grows, where the run begins, by the stitches it started with: another
/// start count, by which it lies flat, every round keeping its part of the start. Nothing where that is the
/// count it has, or a round is worked otherwise than evenly to a multiple of the start.
[[nodiscard]] std::optional<Cure> start_count_cure(const CheckInput& input, RoundRun run);

/// Whole stitches more a round, at least 1: as many as lie flat at this round without a ruffle.
[[nodiscard]] int flat_step(const CheckInput& input, int round);

}  // namespace roundwright
