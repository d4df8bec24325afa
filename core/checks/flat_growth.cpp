#include "core/checks/flat_growth.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace roundwright {

namespace {

/// A round ruffles from about this share above flat growth on (core/shape/lie.cpp).
constexpr double most_growth = 1.05;

}  // namespace

int flat_step(const CheckInput& input, int round) {
    const double flat = input.study.lies[static_cast<std::size_t>(round)].flat_increase;
    return std::isfinite(flat) ? std::max(1, static_cast<int>(std::min(most_growth * flat, 1e6))) : 1;
}

std::optional<Cure> spread_cure(const CheckInput& input, RoundRun run) {
    const int below = input.loops_below(run.first);
    const int count = input.loops_left(run.last);
    const int step = flat_step(input, run.last);
    const int rounds_now = run.last - run.first + 1;
    const int rounds_needed = (std::abs(count - below) + step - 1) / step;
    if (rounds_needed <= rounds_now) return std::nullopt;
    const Round& like = input.piece.rounds[static_cast<std::size_t>(run.last)];
    return Cure{count > below ? CureKind::spread_increases : CureKind::spread_decreases,
                in_steps(like, below, count, rounds_needed), run.first, rounds_now};
}

std::optional<Cure> flat_counts_cure(const CheckInput& input, RoundRun run) {
    const bool from_ring = run.first <= 1 && input.loops_below(0) == 0;
    const int first = from_ring ? 0 : run.first;
    const int below = input.loops_below(first);
    const int grows = input.loops_left(run.last) >= below ? 1 : -1;
    Cure cure{
        from_ring ? CureKind::change_start_count : CureKind::set_count, {}, first, run.last - first + 1};
    bool changes = false;
    int count = below;
    for (int i = first; i <= run.last; ++i) {
        count = std::max(1, count + grows * flat_step(input, i));
        changes = changes || count != input.loops_left(i);
        cure.rounds.push_back(with_count(input.piece.rounds[static_cast<std::size_t>(i)], count));
    }
    return changes ? std::optional<Cure>(cure) : std::nullopt;
}

}  // namespace roundwright
