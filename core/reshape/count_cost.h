#pragma once

#include "core/reshape/choose_counts.h"

namespace roundwright {

/// The terms of the cost of counts (`choose_counts` states it), with what does not change from candidate to
/// candidate worked out once.
class CountCost {
  public:
    explicit CountCost(const CountProblem& problem);

    [[nodiscard]] double wanted(std::size_t round) const;
    [[nodiscard]] double tolerance(std::size_t round) const;
    [[nodiscard]] double of_count(std::size_t round, int count) const;
    /// Of a round over `below` loops; 0: it is worked into a ring.
    [[nodiscard]] double of_step(std::size_t round, int below, int count) const;
    /// How awkward such a round is to work, 0 to 1 1/2.
    [[nodiscard]] double awkwardness(std::size_t round, int below, int count) const;

  private:
    [[nodiscard]] bool accepts(std::size_t round, int count) const;
    [[nodiscard]] double awkwardness_of(std::size_t round, int count) const;
    [[nodiscard]] double of_limits(std::size_t round, int below, int count) const;
    [[nodiscard]] double wanted_step(std::size_t round) const;
    [[nodiscard]] double of_excess(std::size_t round, int below, int count) const;
    [[nodiscard]] double of_jump(std::size_t round, int below, int count) const;

    const CountProblem& problem_;
    int unit_;
    double weight_;
};

/// What tidy counts are multiples of: the start count, or 1 where that gives no useful grid.
[[nodiscard]] int tidy_unit(const CountProblem& problem);

}  // namespace roundwright
